/** Ring sizes stepped down from the first ring to the running guides by a straight funnel between the two. */
import { guideName } from '../kinds/guides.ts';
import { type FunnelStep, funnelSteps } from '../spool/funnel-steps.ts';
import type { GuideOnLine, ReelLineQuestion, RingOnHand } from './reel-line-question.ts';

export interface SteppedGuide extends FunnelStep {
  /** Place in `guides`. */
  guide: number;
  ring?: RingOnHand;
  /** The guide is of this size already. */
  already: boolean;
}
/** From the first ring towards the tip, down to the running guides: those of the smallest opening. */
export function steppedSizes(question: ReelLineQuestion): SteppedGuide[] {
  const { guides, freeM, knotM, onHand } = question;
  const known = guides.flatMap((guide, index) =>
    guide.insideM === undefined ? [] : [{ ...guide, insideM: guide.insideM, index }],
  );
  const first = known.at(-1);
  if (known.length < 2 || first?.index !== guides.length - 1) return [];
  const smallest = Math.min(...known.map(({ insideM }) => insideM));
  const running = known.findLast(({ insideM }) => insideM <= smallest + 1e-9) ?? known[0];
  const stepped = guides
    .map((guide, index) => ({ guide, index }))
    .slice(running.index, -1)
    .reverse();
  const named = [runningRing(running), ...onHand].map((ring) => ({ ...ring, name: guideName(ring) }));
  const alongM = (fromTipM: number) => freeM - fromTipM;
  const steps = funnelSteps({
    lip: { alongM: alongM(first.fromTipM), lipDiameterM: first.insideM },
    first: { alongM: alongM(first.fromTipM), insideM: first.insideM },
    alongM: stepped.map(({ guide }) => alongM(guide.fromTipM)),
    running: { alongM: alongM(running.fromTipM), insideM: running.insideM },
    sizes: named,
    knotM,
  });
  return steps.map((step, i) => {
    const { guide, index } = stepped[i];
    const ring = named.find(({ name }) => name === step.size?.name);
    return {
      ...step,
      guide: index,
      ring,
      already: ring !== undefined && guideName(guide) === guideName(ring),
    };
  });
}

function runningRing({ kind, size, ringHeightM, insideM }: GuideOnLine & { insideM: number }): RingOnHand {
  return { kind, size, ringHeightM, insideM };
}

/**
 * Butt and tip without taps, where the marks tell where the blank must be: it leaves the clamp at a known place and is
 * as long as it is.
 *
 * Cheap smooth paths from the clamp that have the blank's length are looked for; both ends are slid along each to where
 * the picture across the line changes, and what speaks against each is summed (judge-line.ts). Two that are nearly as
 * good, or none that is clear, are no answer: two taps are asked for, and what was thought is given with them.
 */
import type { Finding } from '../../engine/finding.ts';
import { type Camera, cameraProject } from '../camera/camera-model.ts';
import { marksToCamera } from '../camera/marks-check.ts';
import { type Refused, refusedWith } from '../finding.ts';
import { imageFound } from '../image-kinds.ts';
import type { Pixels } from '../pixels.ts';
import { type CoarseRidges, coarseRidges } from '../trace/coarse-path.ts';
import type { TraceRequest } from '../trace/trace-request.ts';
import type { EndsKnown } from './ends-known.ts';
import { costAgainst, type JudgedLine, judgeLine, lineJudgeChoice } from './judge-line.ts';
import { linesFromClamp, pointsBeside } from './lines-from-clamp.ts';
import type { SlidEnds } from './slide-ends.ts';

export type EndsAnswer =
  | { status: 'found'; ends: TraceRequest['ends'] }
  /** `ends` is the best guess, where there is one: to be shown, never to be taken for granted. */
  | { status: 'unsure'; ends?: TraceRequest['ends']; findings: Finding[] }
  | Refused;

export interface EndsChoice {
  /** A path dearer than this for each pixel of the reduced picture is no clear line. */
  clearCostPerPx: number;
  /** Lines that cost up to so many times the cheapest are looked at. */
  seenCost: number;
  /** With so much against every line others are looked for, `rounds` times in all. */
  mostAgainst: number;
  rounds: number;
  /** With so much against it the best is no clear line either. */
  clearAgainst: number;
  /** So much more must speak against a rival. */
  clearBy: number;
  /** The clamp's place and the length may be so many standard deviations off together. */
  mostMiss: number;
  /** Beside the last part of a line that was taken out nothing is followed, in pixels of the reduced picture. */
  leaves: { lastShare: number; reachPx: number };
  /** Ends nearer than this share of the picture's width are the same. */
  sameShare: number;
  /** The tip must be told so well. */
  mostTipSigmaM: number;
}

export const endsChoice: EndsChoice = {
  clearCostPerPx: 0.4,
  seenCost: 2.2,
  mostAgainst: 8,
  clearAgainst: 10,
  rounds: 3,
  clearBy: 3,
  mostMiss: 3.8,
  leaves: { lastShare: 0.3, reachPx: 3 },
  sameShare: 0.003,
  mostTipSigmaM: 0.0052,
};

/** `ridges`: the picture's lines where they were looked for already. */
export function findEnds(
  known: EndsKnown,
  pixels: Pixels,
  ridges?: CoarseRidges,
  choice = endsChoice,
): EndsAnswer {
  const marks = known.marks.map(({ px, atM }) => ({
    pixel: { x: px[0], y: px[1] },
    plane: { x: atM[0], y: atM[1] },
  }));
  const seen = marksToCamera(marks, { widthPx: pixels.width, heightPx: pixels.height });
  if (seen.status === 'refused') return refusedWith(seen.findings);
  const { camera } = seen.fit;
  const wrong = knownFindings(known, camera, pixels);
  if (wrong.length > 0) return refusedWith(wrong);
  const lines = judgedLines(ridges ?? coarseRidges(pixels), pixels, camera, known, choice);
  const [best, ...others] = lines.sort((a, b) => a.against - b.against);
  if (!best) return { status: 'unsure', findings: [imageFound('ends', 'ends/no-line', {})] };
  const { butt, tip } = best.slid;
  const ends: TraceRequest['ends'] = { butt: [butt.x, butt.y], tip: [tip.x, tip.y] };
  const doubt = doubtOf(best, others, choice.sameShare * pixels.width, choice);
  return doubt ? { status: 'unsure', ends, findings: [doubt] } : { status: 'found', ends };
}

/** A line that no blank can be is taken out, from where it may have left the blank, and others are looked for. */
function judgedLines(
  ridges: CoarseRidges,
  pixels: Pixels,
  camera: Camera,
  known: EndsKnown,
  choice: EndsChoice,
): JudgedLine[] {
  const { factor } = ridges;
  const judged: JudgedLine[] = [];
  const out = new Set<number>();
  for (let round = 0; round < choice.rounds; round++) {
    const lines = linesFromClamp(ridges, camera, known, choice.seenCost, (point) => out.has(point));
    const leastCost = judged[0]?.line.cost ?? lines[0]?.cost;
    let least = Number.POSITIVE_INFINITY;
    for (const line of lines) {
      if (costAgainst(line, leastCost) > least + choice.clearBy) break;
      judged.push(judgeLine(pixels, camera, known, line, { leastCost, factor }));
      least = Math.min(...judged.map(({ against }) => against));
    }
    if (lines.length === 0 || least < choice.mostAgainst) break;
    for (const point of pointsBeside(ridges, lines, choice.leaves)) out.add(point);
  }
  return judged;
}

function knownFindings({ lengthM, clamp }: EndsKnown, camera: Camera, pixels: Pixels): Finding[] {
  const findings: Finding[] = [];
  const [leastM, mostM] = [0.3, 10];
  if (!(lengthM >= leastM && lengthM <= mostM))
    findings.push(imageFound('lengthM', 'ends/length', { lengthM, leastM, mostM }));
  const { x, y } = cameraProject(camera, { x: clamp.atM[0], y: clamp.atM[1] });
  if (!(x >= 0 && y >= 0 && x < pixels.width && y < pixels.height)) {
    findings.push(imageFound('clamp', 'ends/clamp-outside', { xPx: x, yPx: y }));
  }
  return findings;
}

function doubtOf(
  best: JudgedLine,
  others: readonly JudgedLine[],
  samePx: number,
  choice: EndsChoice,
): Finding | undefined {
  const { line, slid, against } = best;
  if (line.costPerPx > choice.clearCostPerPx || against > choice.clearAgainst)
    return imageFound('ends', 'ends/no-line', {});
  const isRival = (other: JudgedLine) =>
    other.against < against + choice.clearBy && endsApartPx(other.slid, slid) > samePx;
  if (others.some(isRival)) return imageFound('ends', 'ends/two-lines', {});
  const end = unclearEnd(slid, choice);
  return end && imageFound(`ends.${end}`, 'ends/end-unclear', { end });
}

function endsApartPx(a: SlidEnds, b: SlidEnds): number {
  return Math.max(
    Math.hypot(a.butt.x - b.butt.x, a.butt.y - b.butt.y),
    Math.hypot(a.tip.x - b.tip.x, a.tip.y - b.tip.y),
  );
}

export function unclearEnd(
  { change, clampMiss, lengthMiss, tipSigmaM }: Omit<SlidEnds, 'butt' | 'tip' | 'goesOn'>,
  choice = endsChoice,
): 'butt' | 'tip' | undefined {
  if (change < lineJudgeChoice.leastChange) return 'butt';
  if (Math.hypot(lengthMiss, clampMiss) > choice.mostMiss)
    return Math.abs(clampMiss) > Math.abs(lengthMiss) ? 'butt' : 'tip';
  return tipSigmaM > choice.mostTipSigmaM ? 'tip' : undefined;
}

/** Layouts to start the placing from: several, because the worst ratio has more than one valley. */

import { criteriaIn } from './criteria.ts';
import type { LadderReading } from './ladder.ts';
import type { LayoutLimits } from './ladder-request.ts';
import type { PlacingRules } from './placing-rules.ts';

/** Intervals between neighbouring held guides that grow by one and the same factor. */
export function geometricLayout(rules: PlacingRules, factor: number): number[] {
  return betweenHeld(rules, (from, to, step, steps) => {
    const share = factor === 1 ? step / steps : (factor ** step - 1) / (factor ** steps - 1);
    return from + share * (to - from);
  });
}

/** Intervals drawn at random, the largest up to `spread` times the smallest, in growing order where asked. */
export function randomLayout(rules: PlacingRules, random: () => number, spread: number): number[] {
  const drawn = rules.held.map(() => spread ** random());
  if (rules.growth !== 'free') drawn.sort((a, b) => a - b);
  const total = [0];
  for (const interval of drawn) total.push(total[total.length - 1] + interval);
  return betweenHeld(rules, (from, to, step, steps) => from + (total[step] / total[steps]) * (to - from));
}

/**
 * Guides as close as this reading asks for: how close is taken from each span's readings over their limits
 * (with the power of the interval that each criterion grows with),
 * and the guides between two held ones share that demand equally.
 */
export function demandLayout(
  rules: PlacingRules,
  fromTipM: readonly number[],
  reading: LadderReading,
  limits: LayoutLimits,
): number[] {
  const ends = [0, ...fromTipM];
  const isInner = (ring: number) => ring > 0 && ring < fromTipM.length;
  const demand = fromTipM.map((_, span) => {
    let most = 1e-3;
    for (const { rings, spans } of reading.loads) {
      for (const criterion of criteriaIn(limits)) {
        const limit = limits[criterion.quantity]!;
        const value =
          criterion.at === 'span'
            ? criterion.of(spans[span])
            : Math.max(...[span, span + 1].map((ring) => (isInner(ring) ? criterion.of(rings[ring]) : 0)));
        const share = Math.max(0, value / limit);
        most = Math.max(most, criterion.growsAs === 2 ? Math.sqrt(share) : share);
      }
    }
    return most / (ends[span + 1] - ends[span]);
  });
  const total = [0];
  demand.forEach((perM, span) => {
    total.push(total[span] + perM * (ends[span + 1] - ends[span]));
  });
  const totalAt = (place: number) => interpolate(ends, total, place);
  return betweenHeld(rules, (from, to, step, steps) => {
    const [low, high] = [totalAt(from), totalAt(to)];
    return interpolate(total, ends, low + (step / steps) * (high - low));
  });
}

/** Fills the guides between held ones; the first and the last guide must be held. */
function betweenHeld(
  rules: PlacingRules,
  placeAt: (from: number, to: number, step: number, steps: number) => number,
): number[] {
  const held = rules.held.flatMap((station, guide) => (station === undefined ? [] : [{ station, guide }]));
  const out = rules.held.map((station) => station ?? 0);
  for (let k = 0; k + 1 < held.length; k++) {
    const [from, to] = [held[k], held[k + 1]];
    const steps = to.guide - from.guide;
    for (let i = 1; i < steps; i++) out[from.guide + i] = placeAt(from.station, to.station, i, steps);
  }
  return out;
}

/** Linear through ascending points, the last piece going on. */
function interpolate(x: readonly number[], y: readonly number[], at: number): number {
  let i = 1;
  while (i < x.length - 1 && x[i] < at) i++;
  return y[i - 1] + ((at - x[i - 1]) / (x[i] - x[i - 1])) * (y[i] - y[i - 1]);
}

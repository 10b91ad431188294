/**
 * What a layout is judged by where the builder says nothing. Limits and ladder are calibrated to common
 * practice, not derived: with them the smoothed optimum on smooth blanks of several line weights lands on the
 * arithmetic rule (docs/theory-layout.md).
 */

import type { Rod } from '../bend/rod.ts';
import { byQuantity, criteria } from './criteria.ts';
import type { LadderLoad, LayoutLimits } from './ladder-request.ts';
import { tipLoadForThird } from './tip-load.ts';

/** `onTop`: how deep the line would cut into the blank counts too. */
export function defaultLimits(lengthM: number, onTop = false): LayoutLimits {
  return byQuantity(
    ({ usualLimit }) => usualLimit(lengthM),
    criteria.filter((one) => onTop || !one.onTop),
  );
}

/** Shares of the tip load for a third of the length, pulled straight down. */
const defaultLadderShares: readonly number[] = [0.3, 0.8, 2, 5];

/** Undefined where the rod has no tip load for a third of its length. */
export function defaultLadder(rod: Rod): LadderLoad[] | undefined {
  const { status, tipN } = tipLoadForThird(rod);
  if (status !== 'converged') return undefined;
  return defaultLadderShares.map((share) => ({ tensionN: share * tipN, pullAngleRad: -Math.PI / 2 }));
}

/**
 * The arithmetic rule (common practice, no source): intervals that grow by one and the same step, the first of
 * them from the tip-top to guide 1, the last guide at its place. D_i = i t + d i (i - 1) / 2.
 */
export function arithmeticRule(firstFromTipM: number, lastFromTipM: number, count: number): number[] {
  if (count === 1) return [firstFromTipM];
  const step = (lastFromTipM - count * firstFromTipM) / ((count * (count - 1)) / 2);
  const places = Array.from({ length: count }, (_, k) => (k + 1) * firstFromTipM + (step * (k + 1) * k) / 2);
  places[count - 1] = lastFromTipM;
  return places;
}

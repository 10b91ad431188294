import { handyWeight } from './loads.ts';

/**
 * The next weight that proves something: half as much again as the heaviest that hung, or the ladder's lightest where
 * nothing did. Half as much again is judgement: far enough to be new, near enough not to break a blank.
 */
export function nextProofKg(hungKg: readonly number[], ladderKg: readonly number[]): number | undefined {
  const heaviest = Math.max(0, ...hungKg);
  if (heaviest > 0) return handyWeight(1.5 * heaviest);
  return ladderKg.length > 0 ? Math.min(...ladderKg) : undefined;
}

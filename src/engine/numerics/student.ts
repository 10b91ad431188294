/**
 * Student's distribution with three degrees of freedom, made narrower so that 95 of 100 lie within ±1.96 as they do of
 * the standard normal: more lies near the middle, more lies far out. It is a normal number times a scale of its own,
 * k √(3/χ²), χ² with three degrees of freedom.
 */
import { normalBelow } from './normal.ts';

/** 1.95996 / 3.18245, the two 97.5 % points (tables). */
const narrower = 0.61587;

/** What lies below x (in closed form). */
export function studentBelow(x: number): number {
  const t = x / (narrower * Math.sqrt(3));
  return 0.5 + (t / (1 + t * t) + Math.atan(t)) / Math.PI;
}

/** The scale that the given share of all scales exceed, to half a percent. */
export function studentScale(share: number): number {
  let [low, high] = [0, 10];
  for (let halving = 0; halving < 30; halving++) {
    const at = 0.5 * (low + high);
    // √χ² has the density √(2/π) x² exp(-x²/2)
    const below = 2 * normalBelow(at) - 1 - at * Math.sqrt(2 / Math.PI) * Math.exp(-0.5 * at * at);
    if (below < share) low = at;
    else high = at;
  }
  return (narrower * Math.sqrt(3)) / low;
}

/** Shares that fill 0 to 1 evenly however many are taken: 1/2, 1/4, 3/4, 1/8, 5/8 … (radical inverse, base 2). */
export function evenShare(index: number): number {
  let [share, part] = [0, 0.5];
  for (let left = index + 1; left > 0; left = Math.floor(left / 2), part /= 2) share += part * (left % 2);
  return share;
}

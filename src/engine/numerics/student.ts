/**
 * Student's distribution with three degrees of freedom, made narrower by √3 so that its variance is 1 as the standard
 * normal's: more lies near the middle, more far out. It is a normal number times a scale of its own, 1/χ with three
 * degrees of freedom.
 */
import { normalBelow } from './normal.ts';

/** What lies below x (in closed form). */
export function studentBelow(x: number): number {
  return 0.5 + (x / (1 + x * x) + Math.atan(x)) / Math.PI;
}

/** The scale that the given share of all scales exceed: to 0.2 % for most, 0.6 % too large where one of 64 does, 2 % one of 256. */
export function studentScale(share: number): number {
  let [low, high] = [0, 10];
  for (let halving = 0; halving < 30; halving++) {
    const chi = 0.5 * (low + high);
    // χ has the density √(2/π) χ² exp(-χ²/2)
    const below = 2 * normalBelow(chi) - 1 - chi * Math.sqrt(2 / Math.PI) * Math.exp(-0.5 * chi * chi);
    if (below < share) low = chi;
    else high = chi;
  }
  return 1 / low;
}

/** Shares that fill 0 to 1 evenly however many are taken: 1/2, 1/4, 3/4, 1/8, 5/8 … (radical inverse, base 2). */
export function evenShare(index: number): number {
  let [share, part] = [0, 0.5];
  for (let left = index + 1; left > 0; left = Math.floor(left / 2), part /= 2) share += part * (left % 2);
  return share;
}

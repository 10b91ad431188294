/**
 * Of all the ways in which the blank may differ from the fitted one, only a few show in any reading on offer: an
 * orthonormal basis of what the readings show, the reading with most left over first (pivoted Gram-Schmidt),
 * until what is left of every one is below its own scatter.
 */
import { dot } from '../numerics/dot.ts';
import type { SeenReading } from './readings-seen.ts';

/** Unit vectors in the posterior's standardised spread; `leastSeen` in standard deviations of a reading. */
export function directionsSeen(
  readings: readonly SeenReading[],
  { leastSeen, most }: { leastSeen: number; most: number },
): Float64Array[] {
  const left = readings.map(({ bySpread, sigmaM }) => bySpread.map((value) => value / sigmaM));
  const directions: Float64Array[] = [];
  while (directions.length < most) {
    const sizes = left.map((row) => Math.sqrt(dot(row, row)));
    const largest = Math.max(0, ...sizes);
    if (!(largest > leastSeen)) break;
    const direction = left[sizes.indexOf(largest)].map((value) => value / largest);
    directions.push(direction);
    for (const row of left) {
      const along = dot(row, direction);
      for (let k = 0; k < row.length; k++) row[k] -= along * direction[k];
    }
  }
  return directions;
}

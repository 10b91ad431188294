/** Which readings count, what they say together, and how much more they scatter than was stated. */

import type { Finding } from '../finding.ts';
import { fitHarmonics, type Harmonics, type TurnReading } from './harmonics.ts';
import type { RotationRequest } from './request.ts';
import { rotationFound } from './rotation-kinds.ts';

interface KeptReading extends TurnReading {
  /** Of the request's readings. */
  index: number;
  path: string;
}
interface SettledReadings {
  kept: KeptReading[];
  /** Undefined where the turns do not tell bow from stiffness. */
  harmonics: Harmonics | undefined;
  /** The readings left out. */
  odd: Finding[];
  /** Of the stated standard deviation; at least 1. */
  scatter: number;
}

/** A request that was checked. */
export function settleReadings(request: RotationRequest): SettledReadings {
  const settled = withoutOddReadings(request);
  const { kept, harmonics } = settled;
  return { ...settled, scatter: harmonics ? scatterFactor(kept, harmonics, request.sigmaM) : 1 };
}

/** Leaves out, one after the other, readings that are off by more than four standard deviations. */
function withoutOddReadings({ readings, sigmaM }: RotationRequest) {
  let kept: KeptReading[] = readings.flatMap(({ turnRad, dropsM }, i) =>
    dropsM.map((dropM, load) => ({
      turnRad,
      dropM,
      load: load as 0 | 1,
      index: i,
      path: `readings[${i}].dropsM[${load}]`,
    })),
  );
  const odd: Finding[] = [];
  let harmonics = fitHarmonics(kept);
  while (harmonics && kept.length - 6 >= 3 && odd.length < 3) {
    const worst = worstReading(kept, harmonics, sigmaM);
    if (!worst) break;
    const { path, dropM } = kept[worst.index];
    odd.push(rotationFound(path, 'rotation/odd-reading', { dropM, offM: worst.errorM }));
    kept = kept.filter((_, i) => i !== worst.index);
    harmonics = fitHarmonics(kept);
  }
  return { kept, harmonics, odd };
}

/** The scatter of all others decides, so that one gross error does not hide itself by widening it. */
function worstReading(kept: readonly TurnReading[], { residuals, redundancy }: Harmonics, sigmaM: number) {
  let index = -1;
  let largest = 0;
  residuals.forEach((r, i) => {
    const size = redundancy[i] > 0.05 ? (r * r) / redundancy[i] : 0;
    if (size > largest) {
      largest = size;
      index = i;
    }
  });
  if (index < 0) return undefined;
  const square = residuals.reduce((sum, r) => sum + r * r, 0);
  const freedom = kept.length - 6;
  const variance = Math.max(sigmaM ** 2, (square - largest + 4 * sigmaM ** 2) / (freedom - 1 + 4));
  if (largest < 16 * variance) return undefined;
  return { index, errorM: residuals[index] / redundancy[index] };
}

/** How much more the readings scatter than stated; never less, and few readings count little. */
function scatterFactor(kept: readonly TurnReading[], { residuals }: Harmonics, sigmaM: number): number {
  const square = residuals.reduce((sum, r) => sum + r * r, 0) / sigmaM ** 2;
  return Math.sqrt(Math.max(1, (square + 4) / (kept.length - 6 + 4)));
}

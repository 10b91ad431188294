/** Rods of length 1 and EI 1 at the clamp, and the checks of a tip against rows of check-values.json. */
import { type BendAnswer, type BendRequest, bend } from '../../src/engine/bend/bend.ts';
import type { Rod } from '../../src/engine/bend/rod.ts';
import type { CheckRow } from '../check-values.ts';
import type { Check } from './check.ts';

/** Accuracy of the bend at a number of elements, as a share of the rod's length. */
export interface Accuracy {
  resolution: number;
  /** 0.2 mm on a 3 m rod is 6.7e-5. */
  place: number;
}
/** What a user gets, against what a builder can measure. */
export const asShipped: Accuracy = { resolution: 300, place: 6.7e-5 };
/** The same answers with eleven times the elements, to a hundredth of that. */
export const refined: Accuracy = { resolution: 3300, place: 6e-7 };

export const uniformRod: Rod = { lengthM: 1, stiffness: [{ fromTipM: 0, EINm2: 1 }] };

/** Diameter linear from `ratio` at the tip to 1 at the clamp; EI ~ d^power, mass ~ d^massPower. */
export function taperedRod(
  power: number,
  ratio: number,
  massKgPerM = 0,
  massPower = power - 2,
  rows = 2000,
): Rod {
  const stations = Array.from({ length: rows + 1 }, (_, i) => i / rows);
  const diameter = (at: number) => Math.max(ratio + (1 - ratio) * at, 1e-9);
  return {
    lengthM: 1,
    stiffness: stations.map((at) => ({ fromTipM: at, EINm2: diameter(at) ** power })),
    massPerLength: stations.map((at) => ({ fromTipM: at, kgPerM: massKgPerM * diameter(at) ** massPower })),
  };
}

export function solved(request: BendRequest, accuracy: Accuracy): BendAnswer {
  const answer = bend(request, { resolution: accuracy.resolution });
  if (answer.status !== 'converged') throw new Error(answer.reason?.code);
  return answer;
}

/** Angles err with the same share as places, relative to a radian. */
export function tipCheck(row: CheckRow, ours: number, accuracy: Accuracy, factor = 1): Check {
  return {
    id: row.id,
    quantity: row.quantity,
    source: row.source,
    unit: row.unit,
    ours,
    theirs: row.value as number,
    allowance: factor * accuracy.place,
  };
}

/** Rows that differ only in the last part of their id (`.x`, `.theta`) come from one bend. */
export function byProblem(rows: readonly CheckRow[]): CheckRow[][] {
  const problems = new Map<string, CheckRow[]>();
  for (const row of rows) {
    const problem = row.id.slice(0, row.id.lastIndexOf('.'));
    problems.set(problem, [...(problems.get(problem) ?? []), row]);
  }
  return [...problems.values()];
}

export function lastPart(id: string): string {
  return id.slice(id.lastIndexOf('.') + 1);
}

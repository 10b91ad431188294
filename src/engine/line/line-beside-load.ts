/**
 * A blank's tip load for a third of the length beside the line-mass standard's table. Never a verdict: the mass
 * of a line's first 30 ft is not the tip load, no standard ties the one to the other, and what a caster likes
 * decides.
 */
import { kgPerGrain, placeOfLine, type StandardLine, standardLines } from './line-standard.ts';

export interface LineBesideLoad extends StandardLine {
  /** Target mass of the first 30 ft. */
  targetKg: number;
  /** Tip load for a third of the length over that mass: how many times it the blank carries at that drop. */
  ratio: number;
}

export function linesBesideLoad(thirdLoadKg: number): LineBesideLoad[] {
  return standardLines.map((line) => {
    const targetKg = line.targetGrains * kgPerGrain;
    return { ...line, targetKg, ratio: thirdLoadKg / targetKg };
  });
}

/** Lines are shown about a tenth of the tip load: only a place to open the table at. */
const openedAt = 0.1;

/** The lines of the table nearest to where it is opened, five where there are as many. */
export function linesNear(thirdLoadKg: number): LineBesideLoad[] {
  const place = placeOfLine(openedAt * thirdLoadKg);
  const middle = place.kind === 'in' ? place.number : place.lower;
  return linesBesideLoad(thirdLoadKg).filter(({ number }) => Math.abs(number - middle) <= 2);
}

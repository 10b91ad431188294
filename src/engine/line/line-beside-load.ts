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

/** What such a load leaves open, and what is taken here; stands beside every figure made from it. */
export const loadAmbiguities: readonly string[] = [
  'Datum: the drop is counted from where the tip hangs by the blank’s own weight, not from the level of the butt; the other way the load comes out smaller.',
  'Length: a third of the length in front of the clamp or grip, not of the whole rod.',
  'Angle: none is used here; tables that add one count it from the horizontal or from the unloaded tip.',
];

/** Lines are shown about a tenth of the tip load: only a place to open the table at. */
const openedAt = 0.1;

/** The lines of the table nearest to where it is opened, five where there are as many. */
export function linesNear(thirdLoadKg: number): LineBesideLoad[] {
  const place = placeOfLine(openedAt * thirdLoadKg);
  const middle = place.kind === 'in' ? place.number : place.lower;
  return linesBesideLoad(thirdLoadKg).filter(({ number }) => Math.abs(number - middle) <= 2);
}

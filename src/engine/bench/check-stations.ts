import type { AssembledBlank } from './assemble.ts';
import { type BenchFinding, bothLengths, doubt, stop } from './bench-finding.ts';
import { findSlips } from './chart-slip.ts';
import type { FerruleZone } from './ferrule-zones.ts';

export interface StationsQuestion {
  blank: AssembledBlank;
  /** Length in front of the grip. */
  freeLengthM: number;
  zones: readonly FerruleZone[];
  /** From the tip down, the stripping guide last, the tip-top left out. */
  fromTipM: readonly number[];
  /**
   * The record's path of a list typed as a whole, or of each mark set by itself. Only a typed list is searched
   * for slips: marks that were dragged or placed follow the blank, not a progression.
   */
  path: string | ((index: number) => string);
}

/** A list of marks that cannot stand as it is, or that looks mistyped. Guides are counted from 1 at the tip. */
export function checkStations(question: StationsQuestion): BenchFinding[] {
  const { fromTipM } = question;
  const at = (index: number) => (typeof question.path === 'string' ? question.path : question.path(index));
  if (fromTipM.length === 0) return [stop(at(0), 'The list holds no guide; give at least two marks.')];
  const typed = typeof question.path === 'string' ? fromTipM : [];
  const slips = findSlips(typed).map(({ index, likelyM }) =>
    doubt(
      at(index),
      `Guide ${index + 1} at ${bothLengths(fromTipM[index])} is out of step with its neighbours; about ${bothLengths(likelyM)} would fit. A slip?`,
    ),
  );
  return [
    ...fromTipM.flatMap((mark, index) => checkMark(question, mark, index, at(index))),
    ...fromTipM
      .slice(1)
      .flatMap((mark, index) => checkOrder(fromTipM[index], mark, index + 1, at(index + 1))),
    ...slips,
  ];
}

function checkMark(question: StationsQuestion, mark: number, index: number, path: string): BenchFinding[] {
  const { blank, freeLengthM, zones } = question;
  if (!(mark > 0)) {
    return [
      stop(path, `Guide ${index + 1} at ${bothLengths(mark)} is not below the tip; count from the tip down.`),
    ];
  }
  if (mark > blank.lengthM) {
    const message = `Guide ${index + 1} at ${bothLengths(mark)} lies beyond the blank, which is ${bothLengths(blank.lengthM)} long. Check the unit, and whether the list counts from the butt.`;
    return [stop(path, message)];
  }
  if (mark > freeLengthM) {
    return [
      stop(
        path,
        `Guide ${index + 1} at ${bothLengths(mark)} lies under the grip, which begins at ${bothLengths(freeLengthM)}.`,
      ),
    ];
  }
  const zone = zones.find(({ fromTipM, toTipM }) => mark > fromTipM && mark < toTipM);
  if (!zone) return [];
  const message = `Guide ${index + 1} at ${bothLengths(mark)} stands on the ferrule between ${bothLengths(zone.fromTipM)} and ${bothLengths(zone.toTipM)}; move it clear.`;
  return [doubt(path, message)];
}

function checkOrder(before: number, mark: number, index: number, path: string): BenchFinding[] {
  if (mark > before) return [];
  const word = mark === before ? 'stands at the same place as' : 'stands nearer the tip than';
  return [
    stop(
      path,
      `Guide ${index + 1} at ${bothLengths(mark)} ${word} guide ${index} at ${bothLengths(before)}; give the marks from the tip down.`,
    ),
  ];
}

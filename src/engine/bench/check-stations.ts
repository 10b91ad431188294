import type { AssembledBlank } from './assemble.ts';
import { type BenchFinding, doubtAt, stopAt } from './bench-finding.ts';
import { findSlips } from './chart-slip.ts';
import type { FerruleZone } from './ferrule-zones.ts';

interface StationsQuestion {
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
  if (fromTipM.length === 0) return [stopAt(at(0), 'bench/no-marks', {})];
  const typed = typeof question.path === 'string' ? fromTipM : [];
  const slips = findSlips(typed).map(({ index, likelyM }) =>
    doubtAt(at(index), 'bench/mark-slip', { guide: index + 1, fromTipM: fromTipM[index], likelyM }),
  );
  return [
    ...fromTipM.flatMap((mark, index) => checkMark(question, mark, index, at(index))),
    ...fromTipM
      .slice(1)
      .flatMap((mark, index) => checkOrder(fromTipM[index], mark, index + 1, at(index + 1))),
    ...slips,
  ];
}

function checkMark(
  { blank, freeLengthM, zones }: StationsQuestion,
  mark: number,
  index: number,
  path: string,
): BenchFinding[] {
  const values = { guide: index + 1, fromTipM: mark };
  if (!(mark > 0)) return [stopAt(path, 'bench/mark-above-tip', values)];
  if (mark > blank.lengthM) {
    return [stopAt(path, 'bench/mark-off-blank', { ...values, lengthM: blank.lengthM })];
  }
  if (mark > freeLengthM) return [stopAt(path, 'bench/mark-under-grip', { ...values, gripM: freeLengthM })];
  const zone = zones.find(({ fromTipM, toTipM }) => mark > fromTipM && mark < toTipM);
  if (!zone) return [];
  const where = { zoneFromM: zone.fromTipM, zoneToM: zone.toTipM };
  return [doubtAt(path, 'bench/mark-on-ferrule', { ...values, ...where })];
}

function checkOrder(before: number, mark: number, index: number, path: string): BenchFinding[] {
  if (mark > before) return [];
  return [stopAt(path, 'bench/marks-order', { guide: index + 1, fromTipM: mark, beforeM: before })];
}

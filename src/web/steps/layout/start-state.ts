/** What is to be said of the start beside our marks. */
import { checkStations } from '../../../engine/bench/check-stations.ts';
import type { Finding } from '../../../engine/finding.ts';
import { placeGuide } from '../../../engine/layout/guide-moves.ts';
import type { SheetModel } from '../../read/sheet-model.ts';

export function startName({ choices: { start } }: SheetModel): string {
  if (start.kind === 'rule') return 'arithmetic rule';
  return start.words === 'chart' ? 'chart' : 'own list';
}

/** Whether the start's own marks stand where no guide may. */
export function breaksRules({ startFromTipM, field }: SheetModel): boolean {
  if (startFromTipM.length !== field.fromTipM.length) return false;
  const start = { ...field, fromTipM: startFromTipM, pinned: startFromTipM.map(() => false) };
  return startFromTipM.some((at, guide) => placeGuide(start, guide, at).stop !== undefined);
}

/** What is odd about a typed list: its order, a mark off the blank or on a ferrule, a likely slip. */
export function startFindings({ blank, rod, keepOut, startFromTipM, choices }: SheetModel): Finding[] {
  if (choices.start.kind === 'rule') return [];
  const question = { blank, freeLengthM: rod.lengthM, zones: keepOut, fromTipM: startFromTipM };
  return checkStations({ ...question, path: 'layout/-/startText' });
}

/** Whether there is anything to take over: the start fits the guides, and ours stand elsewhere. */
export function canTakeStart({ startFromTipM, field, marksAre }: SheetModel): boolean {
  return (
    marksAre === 'own' &&
    startFromTipM.length === field.fromTipM.length &&
    !sameMarks(startFromTipM, field.fromTipM)
  );
}

/** To the tick of any tape. */
export function sameMarks(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((at, i) => Math.abs(at - b[i]) < 8e-4);
}

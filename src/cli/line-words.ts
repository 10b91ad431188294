import { rodKindOf } from '../engine/kinds/rod-kinds.ts';
import { linesBesideLoad, linesNear } from '../engine/line/line-beside-load.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { loadAmbiguityWords, thirdLoadInWords } from '../words/line-load.ts';
import type { Writer } from '../words/writer.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** Only for a fly rod whose stiffness was read: the tip load beside the line-mass standard, without a verdict. */
export function linePart({ work, choices }: WorkedBuild, w: Writer): string {
  const { thirdLoadKg, fitted } = work;
  if (!rodKindOf(choices.rodKind).flyLine || thirdLoadKg === undefined || !fitted) return '';
  const rows = linesNear(thirdLoadKg).map(
    ({ number, targetGrains, targetKg, ratio }) =>
      `  number ${number}: first 30 ft ${targetGrains} gr (${w.mass(targetKg)}); the tip load is ${fixedDecimals(ratio, 1)} times that`,
  );
  return [
    `Line beside the blank. ${thirdLoadInWords(w.load(thirdLoadKg), 'at the grip')}. This is not a line weight. Choose the line by casting.`,
    ...rows,
    ...loadAmbiguityWords.map((words) => `  ${words}`),
  ].join('\n');
}

/** The whole table for `report --json`, under the same conditions. */
export function lineData({ work: { thirdLoadKg, fitted }, choices }: WorkedBuild) {
  if (!rodKindOf(choices.rodKind).flyLine || thirdLoadKg === undefined || !fitted) return undefined;
  return { thirdLoadKg, lines: linesBesideLoad(thirdLoadKg) };
}

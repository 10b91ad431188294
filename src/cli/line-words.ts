import { rodKindOf } from '../engine/kinds/rod-kinds.ts';
import { linesBesideLoad, linesNear, loadAmbiguities } from '../engine/line/line-beside-load.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatGrams } from '../engine/units/format-quantity.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** Only for a fly rod whose stiffness was read: the tip load beside the line-mass standard, without a verdict. */
export function linePart({ work, choices }: WorkedBuild): string {
  const { thirdLoadKg, fitted } = work;
  if (!rodKindOf(choices.rodKind).flyLine || thirdLoadKg === undefined || !fitted) return '';
  const rows = linesNear(thirdLoadKg).map(
    ({ number, targetGrains, targetKg, ratio }) =>
      `  number ${number}: first 30 ft ${targetGrains} gr (${formatGrams(targetKg, 1)}); the tip load is ${fixedDecimals(ratio, 1)} times that`,
  );
  return [
    `Line beside the blank, no verdict: ${formatGrams(thirdLoadKg, 0)} at the tip for a third of the length; the first 30 ft of a line is another thing and the two must not be taken for each other.`,
    ...rows,
    ...loadAmbiguities.map((words) => `  ${words}`),
  ].join('\n');
}

/** The whole table for `report --json`, under the same conditions. */
export function lineData({ work: { thirdLoadKg, fitted }, choices }: WorkedBuild) {
  if (!rodKindOf(choices.rodKind).flyLine || thirdLoadKg === undefined || !fitted) return undefined;
  return { thirdLoadKg, lines: linesBesideLoad(thirdLoadKg), ambiguities: loadAmbiguities };
}

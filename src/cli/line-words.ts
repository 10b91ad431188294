import { linesBesideLoad, loadAmbiguities } from '../engine/line/line-beside-load.ts';
import { placeOfLine } from '../engine/line/line-standard.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatGrams } from '../engine/units/format-quantity.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** The five lines shown are those about a tenth of the tip load: only a place to open the table at. */
const openedAt = 0.1;

/** Only for a fly rod whose stiffness was read: the tip load beside the line-mass standard, without a verdict. */
export function linePart({ work, choices }: WorkedBuild): string {
  const { thirdLoadKg, fitted } = work;
  if (choices.rodKind !== 'fly' || thirdLoadKg === undefined || !fitted) return '';
  const place = placeOfLine(openedAt * thirdLoadKg);
  const middle = place.kind === 'in' ? place.number : place.lower;
  const near = linesBesideLoad(thirdLoadKg).filter(({ number }) => Math.abs(number - middle) <= 2);
  const rows = near.map(
    ({ number, targetGrains, targetKg, ratio }) =>
      `  number ${number}: first 30 ft ${targetGrains} gr (${formatGrams(targetKg, 1)}); the tip load is ${fixedDecimals(ratio, 1)} times that`,
  );
  return [
    `Line beside the blank, no verdict: ${formatGrams(thirdLoadKg, 0)} at the tip for a third of the length; the first 30 ft of a line is another thing and the two must not be taken for each other.`,
    ...rows,
    ...loadAmbiguities.map((words) => `  ${words}`),
  ].join('\n');
}

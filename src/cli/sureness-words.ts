import type { BuildSureness } from '../engine/flow/build-sureness.ts';
import { criteria } from '../engine/layout/criteria.ts';
import type { NextReading } from '../engine/sureness/next-reading.ts';
import type { Spread } from '../engine/sureness/spread.ts';
import type { MarksSureness } from '../engine/sureness/sureness.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatGrams, formatLength, formatMm } from '../engine/units/format-quantity.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import { criterionWords } from '../words/criteria.ts';
import { enoughInWords, narrowingInWords, readingInWords } from '../words/next-reading.ts';
import type { WorkSureness } from './sureness-of-work.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** The report's paragraph on how sure it is; with a guess from the diameters it says that nothing is. */
export function surenessPart({ work, choices }: WorkedBuild, sureness: WorkSureness | undefined): string {
  if (!sureness) {
    return 'How sure: not known. No drop was read, so that the stiffness, every score and every mark rest on a guess.';
  }
  const { scores, marks } = sureness;
  const named: [string, MarksSureness | undefined][] = [
    ['start', scores.start],
    ['proposed', scores.proposed],
    ['your marks', scores.own],
  ];
  const rows = named.flatMap(([name, of]) => (of && of.blanks > 0 ? [rangeLine(name, of)] : []));
  const ours = scores.own ?? scores.proposed;
  const tips = (ours?.tips ?? []).map(
    ({ plusMinusM }, load) => `${formatGrams(work.question.loads.kg[load], 0)} ±${formatMm(plusMinusM, 0)}`,
  );
  return [
    `How sure, from ${scores.blanks} blanks that fit the readings (95 of 100 lie in each range; ± of the model itself not counted):`,
    ...rows,
    'Marks placed for the most probable blank read best on that one: on the others their worst reading is mostly higher.',
    betterLine(sureness),
    `Tip place under each load: ${tips.join(', ')}.`,
    markLine(marks, work),
    nextLine(sureness.next, choices.tapeStep === '1 mm' ? 'mm' : 'inch'),
  ]
    .filter((line) => line !== '')
    .join('\n');
}

function rangeLine(name: string, { unbent, ...sure }: MarksSureness): string {
  const lost = unbent > 0 ? `; ${unbent} blanks found no bend at some load and are not counted` : '';
  const ranges = criteria.map(({ id, quantity }) => {
    const { name: what, figure } = criterionWords[id];
    return `${what} ${spanInWords(sure[quantity], figure)}`;
  });
  return `  ${name}: ${ranges.join(', ')}${lost}`;
}

/** The unit of both ends is written once where it stands apart: `0.041 to 0.046 1/m`. */
function spanInWords({ low, high }: Spread, figure: (value: number) => string): string {
  return `${figure(low).replace(/ 1\/m$/, '')} to ${figure(high)}`;
}

function betterLine({ scores: { better } }: BuildSureness): string {
  if (!better || better.of === 0) return '';
  const whose = better.ours === 'own' ? 'Your marks are' : 'The proposed marks are';
  return `${whose} better than the start on ${better.count} of ${better.of} blanks that fit your readings.`;
}

/** A ± within the mark's slack changes nothing that could be seen. */
function markLine(marks: BuildSureness['marks'], { best }: WorkedBuild['work']): string {
  if (marks.blanks < 2)
    return 'How far the best places move is not known: the guides could not be placed anew.';
  const outside = marks.plusMinusM.flatMap((plusMinusM, guide) => {
    const { towardsTip, towardsButt } = best.slackM[guide];
    return plusMinusM > Math.min(towardsTip, towardsButt) && plusMinusM > 5e-4 ? [guide + 1] : [];
  });
  const cost = `Keeping the proposed marks costs at most ${fixedDecimals(100 * marks.costOfKeeping, 0)} % of the worst reading on 95 of 100 of them.`;
  const list = marks.plusMinusM
    .map((plusMinusM, guide) => `${guide + 1} ±${formatMm(plusMinusM, 0)}`)
    .join(', ');
  const matter =
    outside.length === 0
      ? 'Every ± is smaller than the mark’s slack, so it does not matter.'
      : `Larger than its slack at guide ${outside.join(', ')}; a ± smaller than the slack does not matter.`;
  return `Best places, placed anew on ${marks.blanks} blanks: ${list}. ${matter} ${cost}`;
}

/** Which reading would tell most, and whether it is wanted at all. */
function nextLine(next: NextReading, system: UnitSystem): string {
  const [option] = next.options;
  if (!option) return '';
  const place = (at: number) => formatLength(at, { system, denominator: 2, decimals: 0 });
  const wording = { place, size: (m: number) => formatLength(m, { system, denominator: 16, decimals: 0 }) };
  const reading = `Next reading: ${readingInWords(option, wording)} ${narrowingInWords(option, next, wording)}; about ${option.minutes} minutes.`;
  return `${reading}\n${enoughInWords(next, wording)}`;
}

import type { BuildSureness } from '../engine/flow/build-sureness.ts';
import { criteriaIn } from '../engine/layout/criteria.ts';
import type { NextReading } from '../engine/sureness/next-reading.ts';
import type { Spread } from '../engine/sureness/spread.ts';
import type { MarksSureness } from '../engine/sureness/sureness.ts';
import { criterionWords } from '../words/criteria.ts';
import type { LadderWriter } from '../words/ladder-writer.ts';
import { enoughInWords, narrowingInWords, readingInWords } from '../words/next-reading.ts';
import { plusMinusInWords } from '../words/places.ts';
import type { WorkSureness } from './sureness-of-work.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** The report's paragraph on how sure it is; with a guess from the diameters it says that nothing is. */
export function surenessPart(
  { work }: WorkedBuild,
  sureness: WorkSureness | undefined,
  w: LadderWriter,
): string {
  if (!sureness) {
    return 'How sure: not known. No drop was read, so the stiffness, every score and every mark rest on a guess.';
  }
  const { scores, marks } = sureness;
  const named: [string, MarksSureness | undefined][] = [
    ['start', scores.start],
    ['proposed', scores.proposed],
    ['your marks', scores.own],
  ];
  const rows = named.flatMap(([name, of]) => (of && of.blanks > 0 ? [rangeLine(name, of, w)] : []));
  const standing = scores[work.standing.are === 'spread' ? 'proposed' : work.standing.are];
  const tips = (standing?.tips ?? []).map(
    ({ plusMinusM }, load) => `${w.loads[load]} ±${w.tick(plusMinusM)}`,
  );
  return [
    `How sure: ${scores.blanks} blanks fit your readings. 95 of 100 lie in each range; errors of the model itself are not in it.`,
    ...rows,
    'The marks suit the most likely blank best. On the others their worst is mostly higher.',
    betterLine(sureness, work),
    `The tip under each load: ${tips.join(', ')}.`,
    markLine(marks, work, w),
    nextLine(sureness.next, w),
  ]
    .filter((line) => line !== '')
    .join('\n');
}

function rangeLine(name: string, { unbent, ...sure }: MarksSureness, w: LadderWriter): string {
  const lost = unbent > 0 ? `; ${unbent} blanks left out: not every load has an answer` : '';
  const ranges = criteriaIn(sure).map(({ id, quantity }) => {
    const { name: what, figure } = criterionWords[id];
    return `${what} ${spanInWords(sure[quantity]!, (value) => figure(value, w))}`;
  });
  return `  ${name}: ${ranges.join(', ')}${lost}`;
}

/** The unit of both ends is written once where it stands apart: `0.041 to 0.046 1/m`. */
function spanInWords({ low, high }: Spread, figure: (value: number) => string): string {
  if (figure(low) === figure(high)) return figure(high);
  return `${figure(low).replace(/ 1\/m$/, '')} to ${figure(high)}`;
}

function betterLine({ scores: { better } }: BuildSureness, { best }: WorkedBuild['work']): string {
  if (!better || better.of === 0) return '';
  // the start is proposed: it is not better than itself
  if (better.ours === 'proposed' && best.verdict.startKept && !best.verdict.startBreaks) return '';
  const whose = better.ours === 'own' ? 'Your marks are' : 'The proposed marks are';
  return `${whose} better than the start on ${better.count} of ${better.of} blanks that fit your readings.`;
}

/** A ± within the mark's slack changes nothing that could be seen. */
function markLine(marks: BuildSureness['marks'], { best }: WorkedBuild['work'], w: LadderWriter): string {
  if (marks.blanks < 2) return 'How far the best places move is not known: too few blanks took a layout.';
  const outside = marks.plusMinusM.flatMap((plusMinusM, guide) => {
    const { towardsTip, towardsButt } = best.slackM[guide];
    return plusMinusM > Math.min(towardsTip, towardsButt) && plusMinusM > 5e-4 ? [guide + 1] : [];
  });
  const cost = `Keeping the proposed marks costs at most ${w.percent(marks.costOfKeeping)} of the worst, on 95 of 100.`;
  const list = marks.plusMinusM
    .map((plusMinusM, guide) => `${guide + 1} ${plusMinusInWords(plusMinusM, w)}`)
    .join(', ');
  const matter =
    outside.length === 0
      ? 'Every ± is within its slack, so it does not matter.'
      : `Wider than its slack at guide ${outside.join(', ')}; elsewhere it does not matter.`;
  return `How sure is each place (from layouts for ${marks.blanks} blanks): ${list}. ${matter} ${cost}`;
}

/** Which reading would tell most, and whether it is wanted at all. */
function nextLine(next: NextReading, w: LadderWriter): string {
  const [option] = next.options;
  if (!option) return '';
  const reading = `Next reading: ${readingInWords(option, w)} ${narrowingInWords(option, next, w)} About ${option.minutes} minutes.`;
  return `${reading}\n${enoughInWords(next, w)}`;
}

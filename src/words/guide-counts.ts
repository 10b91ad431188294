/** How many guides: the answer in words and in the figures of its table. */
import type { CountsAnswer, GuideCount } from '../engine/flow/count-answer.ts';
import { criteriaIn } from '../engine/layout/criteria.ts';
import type { LayoutLimits } from '../engine/layout/ladder-request.ts';
import { criterionWords } from './criteria.ts';
import type { LadderWriter } from './ladder-writer.ts';
import type { Writer } from './writer.ts';

interface CountFigure {
  text: string;
  /** Beyond its limit. */
  beyond: boolean;
}
interface CountRow {
  name: string;
  /** One for every number of guides. */
  figures: CountFigure[];
}

/** The largest of each criterion; bend that the line adds has a row only where it decides. */
export function countRows(counts: readonly GuideCount[], limits: LayoutLimits, writer: Writer): CountRow[] {
  const row = (name: string, figure: (count: GuideCount) => CountFigure): CountRow => ({
    name,
    figures: counts.map((one) => (one.status === 'converged' ? figure(one) : noBend)),
  });
  const judged = criteriaIn(limits).flatMap(({ id, quantity }) => {
    const { most, figure, onlyWhereItDecides } = criterionWords[id];
    const isBeyond = ({ readings }: GuideCount) => readings[quantity]! > limits[quantity]!;
    if (onlyWhereItDecides && !counts.some(isBeyond)) return [];
    return row(most, (count) => ({
      text: figure(count.readings[quantity]!, writer),
      beyond: isBeyond(count),
    }));
  });
  const felt = row('felt at the tip', ({ feltAtTipKg }) => ({
    text: writer.mass(feltAtTipKg),
    beyond: false,
  }));
  return [...judged, felt];
}
const noBend: CountFigure = { text: 'no bend', beyond: true };

/** `11 are the fewest within your limits.` */
export function fewestInWords({ counts, fewest }: CountsAnswer): string {
  if (counts.length === 0) return 'No number of guides near yours has a layout here.';
  if (fewest === undefined) return 'None of these keeps your limits.';
  return fewest === counts[0].count
    ? `${fewest} guides keep your limits. Fewer were not tried.`
    : `${fewest} are the fewest within your limits.`;
}

/** Guides on top: from which load the line lies on the blank with so many. */
export function clearRow(counts: readonly GuideCount[], writer: LadderWriter): CountRow[] {
  if (!counts.some(({ onBlank }) => onBlank)) return [];
  const figures = counts.map(({ onBlank = [] }): CountFigure => {
    const first = onBlank.findIndex(({ clear }) => !clear);
    return first < 0
      ? { text: 'clear', beyond: false }
      : { text: `from ${writer.loads[first]}`, beyond: true };
  });
  return [{ name: 'line on blank or foregrip', figures }];
}

/** `Fewest that keep the line off the blank: 9 guides up to 250 g, 11 up to 500 g, none of these clears it at 800 g.` */
export function fewestClearInWords({ fewestClear, counts }: CountsAnswer, writer: LadderWriter): string {
  if (!fewestClear || counts.length === 0) return '';
  const parts: string[] = [];
  fewestClear.forEach((fewest, load) => {
    if (fewestClear[load + 1] === fewest && load + 1 < fewestClear.length) return;
    const loads = writer.loads[load];
    if (fewest === undefined) parts.push(`none of these clears it at ${loads}`);
    else parts.push(`${fewest} guides up to ${loads}`);
  });
  const words = `Fewest that keep the line off the blank: ${parts.join(', ')}.`;
  const behind = fewestClear.findIndex(
    (fewest, load) => fewest === undefined && counts.some(({ onBlank }) => onBlank?.[load].behindLastOnly),
  );
  if (behind < 0) return words;
  return `${words} From ${writer.loads[behind]} it lies on the blank behind the last guide: take a higher one there, or move it toward the butt.`;
}

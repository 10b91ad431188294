/** How many guides: the answer in words and in the figures of its table. */
import type { CountsAnswer, GuideCount } from '../engine/flow/count-answer.ts';
import type { LayoutLimits } from '../engine/layout/ladder-request.ts';
import { criterionWords } from './criteria.ts';
import type { Writer } from './writer.ts';

export interface CountFigure {
  text: string;
  /** Beyond its limit. */
  beyond: boolean;
}
export interface CountRow {
  name: string;
  /** One for every number of guides. */
  figures: CountFigure[];
}

/** Bend that the line adds has a row only where it decides. */
export function countRows(counts: readonly GuideCount[], limits: LayoutLimits, writer: Writer): CountRow[] {
  const row = (name: string, figure: (count: GuideCount) => CountFigure): CountRow => ({
    name,
    figures: counts.map((one) => (one.status === 'converged' ? figure(one) : noBend)),
  });
  const decides = counts.some(({ readings }) => readings.extraBendPerM > limits.extraBendPerM);
  return [
    row('line turns most', ({ readings: { lineAngleRad: value } }) => ({
      text: criterionWords.lineAngle.figure(value, writer),
      beyond: value > limits.lineAngleRad,
    })),
    row('gap at most', ({ readings: { gapM: value } }) => ({
      text: criterionWords.gap.figure(value, writer),
      beyond: value > limits.gapM,
    })),
    ...(decides
      ? [
          row('bend added, of its limit', ({ readings: { extraBendPerM: value } }) => ({
            text: writer.percent(value / limits.extraBendPerM),
            beyond: value > limits.extraBendPerM,
          })),
        ]
      : []),
    row('felt at the tip', ({ feltAtTipKg }) => ({ text: writer.mass(feltAtTipKg), beyond: false })),
  ];
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

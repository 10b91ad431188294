import type { MarkRow } from '../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../engine/units/tape-step.ts';
import { plusMinusInWords, slackInWords, tapeWriter } from './places.ts';
import { markRoundInWords } from './round.ts';

/** A mark as a list prints it: guide, kind, from tip end, from butt end, station, interval, may move. */
export function markCells(row: MarkRow, step: TapeStep): string[] {
  const on = (lengthM: number) => formatOnTape(lengthM, step);
  const mayMove = row.slack && slackInWords(row.slack.towardsTipM, row.slack.towardsButtM, tapeWriter(step));
  return [
    `${row.guide}`,
    row.name,
    on(row.fromOwnTipM),
    on(row.fromOwnButtM),
    on(row.fromTipM),
    on(row.intervalM),
    mayMove ?? '',
  ];
}

export function roundCell({ round }: MarkRow, step: TapeStep): string {
  return round ? markRoundInWords(round, step) : '';
}

export function plusMinusCell({ plusMinusM }: MarkRow, step: TapeStep): string {
  return plusMinusInWords(plusMinusM, tapeWriter(step));
}

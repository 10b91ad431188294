import type { TwistReading } from '../engine/torsion/torsion-test.ts';
import { twistSteps } from '../words/twist-steps.ts';
import type { Writer } from '../words/writer.ts';
import { checkRules } from './check-rules.ts';
import { line, type Mark, type Page, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { type Column, drawTable } from './table.ts';

export interface TwistSheetOptions {
  paper: PaperName;
  stamp: string;
  writer: Writer;
}
/** Weights and arms as they stand in the record; the angles are for the bench. */
export interface TwistOnPaper {
  barFromTipM?: number;
  clampFromTipM?: number;
  weights: readonly Partial<Pick<TwistReading, 'massKg' | 'armM'>>[];
}

/** The bar across the blank: how it stands, the steps, and boxes for the angles. */
export function twistSheet(twist: TwistOnPaper, { paper, stamp, writer }: TwistSheetOptions): Sheet {
  const size = standingPaper[paper];
  const marks: Mark[] = [
    text(marginMm, marginMm + 3, `${stamp} · stiffness in twist`, { bold: true, sizeMm: 3.2 }),
    ...twistSteps.map((words, k) =>
      text(marginMm, marginMm + 10 + 4.6 * k, `${k + 1}. ${words}`, { sizeMm: 2.8 }),
    ),
    text(marginMm, marginMm + 30, cautionWords, { sizeMm: 2.8 }),
    ...sketch(marginMm + 84, marginMm + 52),
    ...drawTable(places(twist, writer), marginMm, marginMm + 78),
    ...drawTable(readings(twist, writer), marginMm, marginMm + 98),
    ...checkRules(size),
  ];
  const page: Page = { ...size, marks };
  return { title: 'Stiffness in twist', pages: [page] };
}

const cautionWords =
  'Wear eye protection. Keep the weight low over the floor; take it off before you move the clamp.';

function places({ barFromTipM, clampFromTipM }: TwistOnPaper, w: Writer) {
  const write = (atM: number | undefined) => (atM === undefined ? '' : w.length(atM));
  const columns: Column[] = [
    { title: 'bar, from the tip', widthMm: 60 },
    { title: 'clamp, from the tip', widthMm: 60 },
  ];
  return { columns, rows: [[write(barFromTipM), write(clampFromTipM)]], rowMm: 8 };
}

/** At least three rows, so that a reading can be taken again. */
function readings({ weights }: TwistOnPaper, w: Writer) {
  const columns: Column[] = [
    { title: 'weight', widthMm: 32 },
    { title: 'arm, axis to hook', widthMm: 40 },
    { title: 'hung left: left end down', widthMm: 50 },
    { title: 'hung right: right end down', widthMm: 50 },
  ];
  const known = weights.map(({ massKg, armM }) => [
    massKg === undefined ? '' : w.load(massKg),
    armM === undefined ? '' : w.length(armM),
    '',
    '',
  ]);
  const empty = Array.from({ length: Math.max(1, 3 - known.length) }, () => ['', '', '', '']);
  return { columns, rows: [...known, ...empty], rowMm: 8 };
}

/** Along the blank toward the clamp: the bar level and turned, the weight at its left end, the V under the blank. */
function sketch(xMm: number, yMm: number): Mark[] {
  const halfMm = 42;
  const turn = (12 * Math.PI) / 180;
  const [dx, dy] = [halfMm * Math.cos(turn), halfMm * Math.sin(turn)];
  const thin = { widthMm: 0.15, dashMm: [1.4, 1.2] };
  const [endX, endY] = [xMm - dx, yMm + dy];
  return [
    line(xMm - halfMm, yMm, xMm + halfMm, yMm, thin),
    line(endX, endY, xMm + dx, yMm - dy, { widthMm: 0.6 }),
    line(xMm - 4, yMm - 1, xMm, yMm + 3.2, { widthMm: 0.35 }),
    line(xMm + 4, yMm - 1, xMm, yMm + 3.2, { widthMm: 0.35 }),
    line(xMm, yMm + 3.2, xMm, yMm + 14, { widthMm: 0.35 }),
    line(endX, endY, endX, endY + 7, { widthMm: 0.2 }),
    line(endX - 2, endY + 7, endX + 2, endY + 7, { widthMm: 2 }),
    text(endX + 4, endY + 8, 'weight', { sizeMm: 2.8 }),
    text(xMm + 5, yMm + 13, 'blank in a V', { sizeMm: 2.8 }),
    text(xMm - halfMm, yMm - 2, 'read this angle', { sizeMm: 2.8 }),
    text(xMm + halfMm + 2, yMm + 1, 'level', { sizeMm: 2.8 }),
  ];
}

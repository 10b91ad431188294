import type { MarkRow, MarksList, SectionMarks } from '../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../engine/units/tape-step.ts';
import { lineSideInWords } from '../words/line-side.ts';
import { markCells, plusMinusCell, roundCell } from '../words/mark-cells.ts';
import { lineSideRoundInWords, linesToDraw } from '../words/round.ts';
import { checkRules, rulesRoomMm } from './check-rules.ts';
import { type Mark, type Page, type Sheet, text } from './drawing.ts';
import { type Block, flowBlocks } from './page-flow.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { correctPage, type PrintFactors, truePrint } from './print-correction.ts';
import { type Column, drawTable, tableHeightMm } from './table.ts';
import { shortWords } from './text-width.ts';

export interface MarksSheetOptions {
  paper: PaperName;
  factors?: PrintFactors;
  stamp: string;
}

/** The marks list on paper: one table per section, as many pages as it takes. */
export function marksSheet(list: MarksList, options: MarksSheetOptions): Sheet {
  const size = standingPaper[options.paper];
  const pages = flowBlocks(
    list.sections.map((section) => sectionBlock(section, list.tapeStep, hasRound(list))),
    { topMm: marginMm + headMm, bottomMm: size.heightMm - marginMm - rulesRoomMm.foot, gapMm: 5 },
  );
  const head = (index: number): Mark[] => [
    text(marginMm, marginMm + 3, `${options.stamp} · page ${index + 1} of ${pages.length}`, { bold: true }),
    text(marginMm, marginMm + 8, datumWords, { sizeMm: 2.6 }),
    text(marginMm, marginMm + 11.6, hasRound(list) ? linesToDraw : surenessWords, { sizeMm: 2.6 }),
  ];
  return {
    title: 'Marks',
    pages: pages.map((marks, index): Page => {
      const page = { ...size, marks: [...head(index), ...marks, ...checkRules(size)] };
      return correctPage(page, options.factors ?? truePrint);
    }),
  };
}
const headMm = 16;
const datumWords =
  'Stations count from the blank’s tip (the ring end of the tip-top’s tube) to the middle of the ring.';
const surenessWords =
  'May move: alone, without harm. Best place ±: where it would stand on blanks that fit the readings, 95 of 100; empty: given, or nothing read.';

/** Narrow enough to leave the rule along the page its place. */
const plainColumns: Column[] = [
  { title: 'guide', widthMm: 11, align: 'end' },
  { title: 'kind', widthMm: 25 },
  { title: 'from tip end', widthMm: 22, align: 'end' },
  { title: 'from butt end', widthMm: 23, align: 'end' },
  { title: 'station', widthMm: 21, align: 'end' },
  { title: 'interval', widthMm: 19, align: 'end' },
  { title: 'may move', widthMm: 25, align: 'end' },
  { title: 'best place ±', widthMm: 21, align: 'end' },
];

/** Guides on more than one line: where each stands round the blank takes the place of how sure it is. */
const roundColumns: Column[] = [
  { title: 'guide', widthMm: 12, align: 'end' },
  { title: 'kind', widthMm: 26 },
  { title: 'from tip end', widthMm: 23, align: 'end' },
  { title: 'from butt end', widthMm: 25, align: 'end' },
  { title: 'round, from the top', widthMm: 34, align: 'end' },
  { title: 'station', widthMm: 22, align: 'end' },
  { title: 'interval', widthMm: 18, align: 'end' },
  { title: 'may move', widthMm: 22, align: 'end' },
];

function hasRound({ sections }: MarksList): boolean {
  return sections.some(({ rows }) => rows.some(({ round }) => round !== undefined));
}

function sectionBlock(section: SectionMarks, step: TapeStep, round: boolean): Block {
  const columns = round ? roundColumns : plainColumns;
  const rows = section.rows.map((row) =>
    round ? roundCells(row, step) : [...markCells(row, step), plusMinusCell(row, step)],
  );
  const title = `${section.name}: ${formatOnTape(section.lengthM, step)} long, stations ${formatOnTape(section.fromTipM, step)} to ${formatOnTape(section.toTipM, step)}`;
  const side =
    section.lineSide &&
    `line side ${shortWords(`${lineSideInWords(section.lineSide)}${lineSideRoundInWords(section, step)}`, 100)}`;
  const sideMm = side ? 4.4 : 0;
  const bare = rows.length === 0;
  return {
    heightMm: 6 + sideMm + (bare ? 0 : tableHeightMm({ rows })),
    draw: (topMm: number): Mark[] => [
      text(marginMm, topMm + 4, bare ? `${title}; no guide on it` : title, { bold: true }),
      ...(side ? [text(marginMm, topMm + 8.2, side, { sizeMm: 2.7 })] : []),
      ...(bare ? [] : drawTable({ columns, rows }, marginMm, topMm + 6 + sideMm)),
    ],
  };
}

function roundCells(row: MarkRow, step: TapeStep): string[] {
  const [guide, name, tip, butt, station, interval, mayMove] = markCells(row, step);
  return [guide, name, tip, butt, roundCell(row, step), station, interval, mayMove];
}

import { formatOnTape, type TapeStep, tapeStepsM } from '../units/tape-step.ts';
import { checkRules, rulesRoomMm } from './check-rules.ts';
import { type Mark, type Page, type Sheet, text } from './drawing.ts';
import type { MarkRow, MarksList, SectionMarks } from './marks-list.ts';
import { type Block, flowBlocks } from './page-flow.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { correctPage, type PrintFactors, truePrint } from './print-correction.ts';
import { type Column, drawTable, tableHeightMm } from './table.ts';

export interface MarksSheetOptions {
  paper: PaperName;
  factors?: PrintFactors;
  stamp: string;
}

/** The marks list on paper: one table per section, as many pages as it takes. */
export function marksSheet(list: MarksList, options: MarksSheetOptions): Sheet {
  const size = standingPaper[options.paper];
  const pages = flowBlocks(
    list.sections.map((section) => sectionBlock(section, list.tapeStep)),
    { topMm: marginMm + headMm, bottomMm: size.heightMm - marginMm - rulesRoomMm.foot, gapMm: 5 },
  );
  const head = (index: number): Mark[] => [
    text(marginMm, marginMm + 3, `${options.stamp} · page ${index + 1} of ${pages.length}`, { bold: true }),
    text(marginMm, marginMm + 8, datumWords, { sizeMm: 2.6 }),
  ];
  return {
    title: 'Marks',
    pages: pages.map((marks, index): Page => {
      const page = { ...size, marks: [...head(index), ...marks, ...checkRules(size)] };
      return correctPage(page, options.factors ?? truePrint);
    }),
  };
}
const headMm = 13;
const datumWords =
  'Stations count from the blank’s tip (the ring end of the tip-top’s tube) to the middle of the ring.';

const columns: Column[] = [
  { title: 'guide', widthMm: 12, align: 'end' },
  { title: 'kind', widthMm: 28 },
  { title: 'from tip end', widthMm: 28, align: 'end' },
  { title: 'from butt end', widthMm: 28, align: 'end' },
  { title: 'station', widthMm: 28, align: 'end' },
  { title: 'interval', widthMm: 22, align: 'end' },
  { title: 'may move', widthMm: 22, align: 'end' },
];

function sectionBlock(section: SectionMarks, step: TapeStep): Block {
  const rows = section.rows.map((row) => markCells(row, step));
  const title = `${section.name}: ${formatOnTape(section.lengthM, step)} long, stations ${formatOnTape(section.fromTipM, step)} to ${formatOnTape(section.toTipM, step)}`;
  const bare = rows.length === 0;
  return {
    heightMm: 6 + (bare ? 0 : tableHeightMm({ rows })),
    draw: (topMm: number): Mark[] => [
      text(marginMm, topMm + 4, bare ? `${title}; no guide on it` : title, { bold: true }),
      ...(bare ? [] : drawTable({ columns, rows }, marginMm, topMm + 6)),
    ],
  };
}

function markCells(row: MarkRow, step: TapeStep): string[] {
  const on = (lengthM: number) => formatOnTape(lengthM, step);
  return [
    `${row.guide}`,
    row.name,
    on(row.fromOwnTipM),
    on(row.fromOwnButtM),
    on(row.fromTipM),
    on(row.intervalM),
    row.slack ? slackWords(row.slack, step) : '',
  ];
}

/** `- 1/4 + 3/8 in`: towards the tip, towards the butt; down to the tape's tick, so that it never promises more. */
function slackWords(
  { towardsTipM, towardsButtM }: { towardsTipM: number; towardsButtM: number },
  step: TapeStep,
) {
  const down = (lengthM: number) =>
    formatOnTape(Math.floor(lengthM / tapeStepsM[step] + 1e-9) * tapeStepsM[step], step);
  return `-${down(towardsTipM).replace(/ (in|mm)$/, '')} +${down(towardsButtM)}`;
}

import type { BenchStage } from '../engine/plan/bench-list.ts';
import { line, type Mark, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { type Column, drawTable, tableHeightMm } from './table.ts';

export interface BenchSheetInput {
  stages: readonly BenchStage[];
  /** What to order, ream, mix: a word and its figure. */
  facts: readonly { what: string; figure: string }[];
  /** From the tip down, as they are marked. */
  guides: readonly {
    guide: string;
    section: string;
    ownTip: string;
    ownButt: string;
    /** Where it stands round the blank; left out where all are on one line. */
    round?: string;
    bag: string;
  }[];
}

/** The whole build on one page beside the vice: figures, marks and stages to tick, none under 12 pt. */
export function benchSheet(
  input: BenchSheetInput,
  { paper, stamp }: { paper: PaperName; stamp: string },
): Sheet {
  const size = standingPaper[paper];
  const widthMm = size.widthMm - 2 * marginMm;
  const factsMm = marginMm + 12;
  const guidesMm = factsMm + Math.ceil(input.facts.length / 2) * factRowMm + 4;
  const stagesMm = 8 * Math.ceil(input.stages.length / 2) + 8;
  const roomMm = size.heightMm - marginMm - guidesMm - stagesMm;
  const hasRound = input.guides.some(({ round }) => round !== undefined);
  const rows = input.guides.map(({ guide, section, ownTip, ownButt, round = '', bag }) => [
    ...[guide, section, ownTip, ownButt],
    ...(hasRound ? [round] : []),
    ...[bag, ''],
  ]);
  const rowMm = Math.min(7.4, roomMm / (rows.length + 1));
  const belowMm = guidesMm + tableHeightMm({ rows, rowMm }) + 8;
  return {
    title: 'Bench',
    pages: [
      {
        ...size,
        marks: [
          text(marginMm, marginMm + 4, `Bench · ${stamp}`, { bold: true, sizeMm: large }),
          ...input.facts.flatMap((fact, index) => drawFact(fact, index, factsMm, widthMm)),
          ...drawTable(
            { columns: columnsOf(widthMm, hasRound), rows, rowMm, textMm: large },
            marginMm,
            guidesMm,
          ),
          ...input.stages.flatMap((stage, index) => drawStage(stage, index, belowMm, widthMm)),
        ],
      },
    ],
  };
}

/** 12 pt: read at arm's length. */
const large = 4.3;
const factRowMm = 8;

function columnsOf(widthMm: number, round: boolean): Column[] {
  const [guide, section, end] = round ? [40, 20, 27] : [42, 30, 36];
  const columns: Column[] = [
    { title: 'guide', widthMm: guide },
    { title: 'section', widthMm: section },
    { title: round ? 'tip end' : 'from its tip end', widthMm: end, align: 'end' },
    { title: round ? 'butt end' : 'from its butt end', widthMm: end, align: 'end' },
    ...(round ? [{ title: 'round, from the top', widthMm: 44, align: 'end' as const }] : []),
    { title: 'bag', widthMm: 14, align: 'end' },
  ];
  const taken = columns.reduce((sum, column) => sum + column.widthMm, 0);
  return [...columns, { title: 'on', widthMm: widthMm - taken, align: 'end' }];
}

/** Two columns of a word and its figure. */
function drawFact(
  { what, figure }: BenchSheetInput['facts'][number],
  index: number,
  topMm: number,
  widthMm: number,
): Mark[] {
  const x = marginMm + (index % 2) * (widthMm / 2 + 2);
  const y = topMm + Math.floor(index / 2) * factRowMm + 4;
  return [
    text(x, y, what, { sizeMm: large - 0.6, ink: 'grey' }),
    text(x + widthMm / 2 - 4, y, figure, { sizeMm: large, bold: true, align: 'end' }),
    line(x, y + 2, x + widthMm / 2 - 4, y + 2, { widthMm: 0.1, ink: 'grey' }),
  ];
}

/** A box to tick, ticked for what is done. */
function drawStage({ name, status }: BenchStage, index: number, topMm: number, widthMm: number): Mark[] {
  const x = marginMm + (index % 2) * (widthMm / 2 + 2);
  const y = topMm + Math.floor(index / 2) * 8;
  const edge = (x1: number, y1: number, x2: number, y2: number) =>
    line(x + x1, y + y1, x + x2, y + y2, { widthMm: 0.4 });
  return [
    edge(0, -4, 4.5, -4),
    edge(4.5, -4, 4.5, 0.5),
    edge(4.5, 0.5, 0, 0.5),
    edge(0, 0.5, 0, -4),
    ...(status === 'done' ? [edge(0.7, -1.8, 1.9, -0.4), edge(1.9, -0.4, 4, -3.4)] : []),
    text(x + 7, y, name, { sizeMm: large, bold: status === 'next' }),
  ];
}

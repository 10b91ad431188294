import type { AssembledBlank } from '../bench/assemble.ts';
import { formatOnTape, type TapeStep } from '../units/tape-step.ts';
import type { Wrap, WrapPlan } from '../wraps/plan-wraps.ts';
import { line, type Mark, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { type Column, drawTable, tableHeightMm } from './table.ts';

export interface WrapSheetOptions {
  paper: PaperName;
  tapeStep: TapeStep;
  stamp: string;
}

/** All wraps on one page: every section drawn with its wraps, then where each starts and ends by its own ends. */
export function wrapSheet(plan: WrapPlan, blank: AssembledBlank, options: WrapSheetOptions): Sheet {
  const size = standingPaper[options.paper];
  const drawnMm = size.widthMm - 2 * marginMm;
  const longestM = Math.max(...blank.sections.map(({ lengthM }) => lengthM));
  const tableTopMm = marginMm + headMm + blank.sections.length * rowOfSectionMm + 4;
  const roomMm = size.heightMm - marginMm - tableTopMm - plan.colours.length * 5 - 4;
  const rowMm = Math.min(5.4, roomMm / (plan.wraps.length + 1));
  const rows = plan.wraps.map((wrap) => wrapCells(wrap, blank, options.tapeStep));
  const footMm = tableTopMm + tableHeightMm({ rows, rowMm }) + 6;
  return {
    title: 'Wraps',
    pages: [
      {
        ...size,
        marks: [
          text(marginMm, marginMm + 3, `Wraps · ${options.stamp}`, { bold: true }),
          text(
            marginMm,
            marginMm + 8,
            'Start and end from the section’s own tip-side end; thread without tags.',
            {
              sizeMm: 2.6,
            },
          ),
          ...blank.sections.flatMap((section, index) =>
            drawSection(plan, index, section.name, {
              topMm: marginMm + headMm + index * rowOfSectionMm,
              mmPerM: drawnMm / longestM,
              lengthM: section.lengthM,
            }),
          ),
          ...drawTable({ columns: columnsOf(drawnMm), rows, rowMm }, marginMm, tableTopMm),
          ...plan.colours.map(({ colour, threadM, spools }, index) =>
            text(
              marginMm,
              footMm + index * 5,
              `${index === 0 ? 'Thread' : 'Trim'} ${colour}: ${threadM.toFixed(1)} m with tags and reserve, ${spools} ${spools === 1 ? 'spool' : 'spools'}`,
              { bold: true },
            ),
          ),
        ],
      },
    ],
  };
}
const headMm = 13;
const rowOfSectionMm = 11;

function columnsOf(widthMm: number): Column[] {
  const rest = widthMm - 52 - 30 - 3 * 24 - 16;
  return [
    { title: 'wrap', widthMm: 52 },
    { title: 'section', widthMm: 30 },
    { title: 'starts', widthMm: 24, align: 'end' },
    { title: 'ends', widthMm: 24, align: 'end' },
    { title: 'length', widthMm: 24, align: 'end' },
    { title: 'turns', widthMm: 16, align: 'end' },
    { title: 'done', widthMm: rest, align: 'end' },
  ];
}

function wrapCells(wrap: Wrap, blank: AssembledBlank, step: TapeStep): string[] {
  return [
    wrap.name,
    blank.sections[wrap.section].name,
    formatOnTape(wrap.startFromOwnTipM, step),
    formatOnTape(wrap.endFromOwnTipM, step),
    `${((wrap.toTipM - wrap.fromTipM) * 1000).toFixed(1)} mm`,
    `${Math.round(wrap.turns)}`,
    '',
  ];
}

interface SectionPlace {
  topMm: number;
  mmPerM: number;
  lengthM: number;
}

function drawSection(plan: WrapPlan, index: number, name: string, place: SectionPlace): Mark[] {
  const { topMm, mmPerM, lengthM } = place;
  const axisMm = topMm + 6;
  return [
    text(marginMm, topMm + 2.5, name, { sizeMm: 2.6 }),
    line(marginMm, axisMm, marginMm + lengthM * mmPerM, axisMm, { widthMm: 0.5, ink: 'grey' }),
    ...plan.wraps
      .filter(({ section }) => section === index)
      .map(
        (wrap): Mark => ({
          kind: 'area',
          xMm: marginMm + wrap.startFromOwnTipM * mmPerM,
          yMm: axisMm - 1.6,
          widthMm: Math.max(0.4, (wrap.toTipM - wrap.fromTipM) * mmPerM),
          heightMm: 3.2,
          ink: 'black',
        }),
      ),
  ];
}

import type { AssembledBlank } from '../engine/bench/assemble.ts';
import { formatOnTape, type TapeStep } from '../engine/units/tape-step.ts';
import type { ColourNeed, Wrap, WrapPlan } from '../engine/wraps/plan-wraps.ts';
import type { WrapChoices } from '../engine/wraps/wrap-choices.ts';
import { threadCalled } from '../words/colour-words.ts';
import { roundOfWrap, wrapName } from '../words/wrap-name.ts';
import type { Writer } from '../words/writer.ts';
import { type Area, line, type Mark, type Sheet, text } from './drawing.ts';
import { fittedWords } from './fitted-words.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { type Column, drawTable, tableHeightMm } from './table.ts';

export interface WrapSheetOptions {
  paper: PaperName;
  tapeStep: TapeStep;
  writer: Writer;
  stamp: string;
  colours: Pick<WrapChoices, 'thread' | 'trim' | 'under'>;
  /** Where each guide stands round the blank, from the tip down; left out where all are on one line. */
  round?: readonly (string | undefined)[];
  signature?: { fromTipM: number; lengthM: number; words?: string };
}

/**
 * All wraps on one page: every section drawn with its wraps in their colours, then where each starts and ends by its
 * own ends. Thread, trim and underwrap differ in height too and are named by letters, so that it reads without colour.
 */
export function wrapSheet(plan: WrapPlan, blank: AssembledBlank, options: WrapSheetOptions): Sheet {
  const size = standingPaper[options.paper];
  const drawnMm = size.widthMm - 2 * marginMm;
  const longestM = Math.max(...blank.sections.map(({ lengthM }) => lengthM));
  const tableTopMm = marginMm + headMm + blank.sections.length * rowOfSectionMm + 4;
  const roomMm = size.heightMm - marginMm - tableTopMm - plan.colours.length * 6 - 4;
  const rowMm = Math.min(6, roomMm / (plan.wraps.length + 1));
  const rows = plan.wraps.map((wrap) => wrapCells(wrap, blank, options));
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
            'Start and end from the section’s own tip end, then its start from the butt end. Thread without tags.',
            { sizeMm: 2.6 },
          ),
          ...blank.sections.flatMap((section, index) =>
            drawSection(plan, index, options, {
              name: section.name,
              topMm: marginMm + headMm + index * rowOfSectionMm,
              mmPerM: drawnMm / longestM,
              lengthM: section.lengthM,
              fromTipM: section.ends.fromTipM,
              last: index === blank.sections.length - 1,
            }),
          ),
          ...drawTable(
            {
              columns: columnsOf(drawnMm, options.round !== undefined),
              rows,
              rowMm,
              textMm: Math.min(4, 0.66 * rowMm),
            },
            marginMm,
            tableTopMm,
          ),
          ...plan.colours.flatMap((need, index) =>
            colourLine(need, footMm + index * 6, trimTurns(plan), options.writer),
          ),
        ],
      },
    ],
  };
}
const headMm = 13;
const rowOfSectionMm = 12;

export const threadLetters = { thread: 'A', trim: 'B', underwrap: 'C' } as const;
const threadWords = { thread: 'Thread', trim: 'Trim', underwrap: 'Underwrap' } as const;

/** `A Thread, dark green, lot 12: 31.2 m with tags and reserve, 1 spool`, beside a swatch. */
function colourLine(need: ColourNeed, yMm: number, trim: number, writer: Writer): Mark[] {
  const { part, threadM, spools, lot, colour } = need;
  const called = [
    threadCalled(need),
    lot ? `lot ${lot}` : '',
    part === 'trim' ? `${trim} turns at each end` : '',
  ]
    .filter((words) => words !== '')
    .join(', ');
  const words = `${threadLetters[part]}  ${threadWords[part]}, ${called}: ${writer.run(threadM)} with tags and reserve, ${spools} ${spools === 1 ? 'spool' : 'spools'}`;
  return [
    { ...area(marginMm, yMm - 3.4, 8, 4), fill: colour },
    text(marginMm + 10, yMm, words, { bold: true, sizeMm: 3.4 }),
  ];
}

const trimTurns = ({ wraps }: WrapPlan) => (wraps.find((wrap) => wrap.trimTurns > 0)?.trimTurns ?? 0) / 2;

/** Of the columns of a spiral, which has one more. */
const roundMm = { around: 24, section: 13, letters: 4 };

function columnsOf(widthMm: number, round: boolean): Column[] {
  const [wrap, section] = round ? [39, roundMm.section] : [46, 24];
  const around: Column[] = round ? [{ title: 'from the top', widthMm: roundMm.around }] : [];
  const rest = widthMm - wrap - section - 3 * 24 - 17 - 12 - (round ? roundMm.around : 0);
  return [
    { title: 'wrap', widthMm: wrap },
    ...around,
    { title: 'section', widthMm: section },
    { title: 'starts', widthMm: 24, align: 'end' },
    { title: 'ends', widthMm: 24, align: 'end' },
    { title: 'butt end', widthMm: 24, align: 'end' },
    { title: 'length', widthMm: 17, align: 'end' },
    { title: 'turns', widthMm: 12, align: 'end' },
    { title: 'done', widthMm: rest, align: 'end' },
  ];
}

function wrapCells(
  wrap: Wrap,
  blank: AssembledBlank,
  { tapeStep: step, writer, round }: WrapSheetOptions,
): string[] {
  const section = blank.sections[wrap.section].name;
  return [
    wrapName(wrap.id),
    ...(round ? [roundOfWrap(wrap.id, round) ?? ''] : []),
    round ? fittedWords(section, roundMm.section - 1, roundMm.letters) : section,
    formatOnTape(wrap.startFromOwnTipM, step),
    formatOnTape(wrap.endFromOwnTipM, step),
    formatOnTape(wrap.startFromOwnButtM, step),
    writer.fine(wrap.toTipM - wrap.fromTipM),
    `${Math.round(wrap.turns)}`,
    '',
  ];
}

interface SectionPlace {
  name: string;
  topMm: number;
  mmPerM: number;
  lengthM: number;
  fromTipM: number;
  last: boolean;
}

function drawSection(
  plan: WrapPlan,
  index: number,
  { colours, signature }: WrapSheetOptions,
  place: SectionPlace,
): Mark[] {
  const { topMm, mmPerM, lengthM } = place;
  const axisMm = topMm + 7;
  const x = (ownTipM: number) => marginMm + ownTipM * mmPerM;
  return [
    text(marginMm, topMm + 2.5, place.name, { sizeMm: 2.8 }),
    line(marginMm, axisMm, x(lengthM), axisMm, { widthMm: 0.5, ink: 'grey' }),
    ...(signature && place.last
      ? [
          text(x(signature.fromTipM - place.fromTipM), axisMm - 1, signature.words ?? 'signature', {
            sizeMm: 2.4,
          }),
        ]
      : []),
    ...plan.wraps
      .filter(({ section }) => section === index)
      .flatMap((wrap) => drawWrap(wrap, { x, axisMm, mmPerM, colours })),
  ];
}

interface WrapPen {
  x(ownTipM: number): number;
  axisMm: number;
  mmPerM: number;
  colours: WrapSheetOptions['colours'];
}

/** Underwrap lower and longer beneath, the thread over it, trim at both ends taller. */
function drawWrap(wrap: Wrap, { x, axisMm, mmPerM, colours }: WrapPen): Mark[] {
  const widthM = wrap.toTipM - wrap.fromTipM;
  const middleM = (wrap.startFromOwnTipM + wrap.endFromOwnTipM) / 2;
  const box = (fromM: number, lengthM: number, tallMm: number, fill: string): Area => ({
    ...area(x(fromM), axisMm - tallMm / 2, Math.max(0.4, lengthM * mmPerM), tallMm),
    fill,
  });
  const { underwrapM, trimEndM } = wrap;
  return [
    ...(underwrapM > 0 ? [box(middleM - underwrapM / 2, underwrapM, 2.2, colours.under.colour)] : []),
    box(wrap.startFromOwnTipM, widthM, 3.2, colours.thread.colour),
    ...(trimEndM > 0
      ? [
          box(wrap.startFromOwnTipM, trimEndM, 4, colours.trim.colour),
          box(wrap.endFromOwnTipM - trimEndM, trimEndM, 4, colours.trim.colour),
        ]
      : []),
  ];
}

function area(xMm: number, yMm: number, widthMm: number, heightMm: number): Area {
  return { kind: 'area', xMm, yMm, widthMm, heightMm, ink: 'black' };
}

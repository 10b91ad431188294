import type { TurnedSection } from '../engine/rotation/turned-section.ts';
import { formatDegrees, formatGrams } from '../engine/units/format-quantity.ts';
import { checkRules, rulesRoomMm } from './check-rules.ts';
import { type Mark, type Page, type Sheet, text } from './drawing.ts';
import { type Block, flowBlocks } from './page-flow.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { type Column, drawTable, tableHeightMm } from './table.ts';
import { shortWords } from './text-width.ts';

export interface TurnsSheetOptions {
  paper: PaperName;
  stamp: string;
}
export interface TurnsOnPaper {
  /** Of the section. */
  name: string;
  section: TurnedSection;
}

/** The turns of every section with boxes to fill in. */
export function turnsSheet(turned: readonly TurnsOnPaper[], { paper, stamp }: TurnsSheetOptions): Sheet {
  const size = standingPaper[paper];
  const pages = flowBlocks(turned.map(turnedBlock), {
    topMm: marginMm + headMm,
    bottomMm: size.heightMm - marginMm - rulesRoomMm.foot,
    gapMm: 5,
  });
  return {
    title: 'Turns',
    pages: pages.map((marks, index): Page => {
      const title = `${stamp} · sweep and spine · page ${index + 1} of ${pages.length}`;
      const head = advice.map((words, k) => text(marginMm, marginMm + 8.5 + k * 4.2, words, { sizeMm: 2.6 }));
      return {
        ...size,
        marks: [
          text(marginMm, marginMm + 3, title, { bold: true, sizeMm: 3.2 }),
          ...head,
          ...marks,
          ...checkRules(size),
        ],
      };
    }),
  };
}

const headMm = 28;
/** Common practice, no source. */
const advice = [
  'Put a paper collar round the section, numbered 0 to 360° with 0 at your reference mark. Facing down: the number toward the weight.',
  'On two supports: read the sag at mid-span, by dial gauge. Clamped: the drop of the tip. Both loads at every step; do not move the supports.',
  'Hang light weights on a soft saddle: a thin wall flattens. Wear eye protection; weights low over the floor.',
];

function turnedBlock({ name, section }: TurnsOnPaper): Block {
  const [light, heavy] = section.loadsKg;
  const columns: Column[] = [
    { title: 'facing down', widthMm: 34, align: 'end' },
    { title: light > 0 ? `under ${formatGrams(light)}` : 'under nothing', widthMm: 44 },
    { title: heavy === undefined ? 'under the weight' : `under ${formatGrams(heavy)}`, widthMm: 44 },
    { title: 'note', widthMm: 46 },
  ];
  const rows = section.turns.map(({ turnRad }) => [
    turnRad === undefined ? '' : formatDegrees(turnRad, 0),
    '',
    '',
    '',
  ]);
  const held = section.held === 'span' ? 'on two supports' : 'clamped at its butt';
  return {
    heightMm: 6 + tableHeightMm({ rows }),
    draw: (topMm: number): Mark[] => [
      text(marginMm, topMm + 4, `${shortWords(name, 60)}, ${held}`, { bold: true }),
      ...drawTable({ columns, rows }, marginMm, topMm + 6),
    ],
  };
}

import { careSources, cautions } from '../words/care.ts';
import { frame, line, type Mark, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { paragraph } from './paragraph.ts';
import { drawTable, tableHeightMm, tableRowMm } from './table.ts';

export interface DeliveredRod {
  title: string;
  customer: string;
  shop: string;
  /** `9 ft, 4 sections, line 5`. */
  facts: string;
  /** Of the frozen record. */
  revision: string;
  date: string;
}
export interface InspectionRow {
  item: string;
  tolerance: string;
  found: string;
  verdict: string;
}
export interface PartRow {
  what: string;
  lot: string;
  dye: string;
}

/** Label, care sheet, and the inspection list with its signatures. */
export function deliverySheets(
  rod: DeliveredRod,
  inspection: readonly InspectionRow[],
  parts: readonly PartRow[],
  paper: PaperName,
): Sheet[] {
  return [labelSheet(rod, paper), careSheet(rod, paper), inspectionSheet(rod, inspection, parts, paper)];
}

/** Two strips to cut out: one for the tube, one for the bag. */
function labelSheet(rod: DeliveredRod, paper: PaperName): Sheet {
  const size = standingPaper[paper];
  const one = (topMm: number): Mark[] => [
    ...frame(marginMm, topMm, 150, 34),
    ...paragraph(rod.title, marginMm + 5, topMm + 9, {
      widthMm: 140,
      sizeMm: 5.5,
      most: 1,
      style: { bold: true },
    }).marks,
    ...paragraph(rod.facts, marginMm + 5, topMm + 16, { widthMm: 140, sizeMm: 3.6, most: 1 }).marks,
    ...paragraph(rod.customer === '' ? '' : `built for ${rod.customer}`, marginMm + 5, topMm + 22, {
      widthMm: 140,
      sizeMm: 3.6,
      most: 1,
    }).marks,
    text(marginMm + 5, topMm + 30, [rod.shop, rod.date].filter(Boolean).join(' · '), { sizeMm: 3 }),
    text(marginMm + 145, topMm + 30, `record ${rod.revision}`, { sizeMm: 2.6, align: 'end', ink: 'grey' }),
  ];
  return { title: 'Label', pages: [{ ...size, marks: [...one(marginMm), ...one(marginMm + 42)] }] };
}

function careSheet(rod: DeliveredRod, paper: PaperName): Sheet {
  const size = standingPaper[paper];
  const widthMm = size.widthMm - 2 * marginMm;
  const marks: Mark[] = [
    text(marginMm, marginMm + 5, 'Care of your rod', { sizeMm: 6, bold: true }),
    text(marginMm, marginMm + 11, [rod.title, rod.shop].filter(Boolean).join(' · ')),
  ];
  let y = marginMm + 21;
  for (const { title, words } of cautions) {
    marks.push(text(marginMm, y, title, { sizeMm: 4, bold: true }));
    const body = paragraph(words, marginMm, y + 5.2, { widthMm, sizeMm: 3.3 });
    marks.push(...body.marks);
    y += body.heightMm + 9.5;
  }
  const last = 'Local rules and those who know the water and the weather come before this sheet.';
  marks.push(text(marginMm, y, last, { sizeMm: 2.8 }), ...careFoot(size.heightMm - marginMm, widthMm));
  return { title: 'Care of your rod', pages: [{ ...size, marks }] };
}

/** Where each caution comes from, once, at the foot of the page. */
function careFoot(bottomMm: number, widthMm: number): Mark[] {
  const style = { widthMm, sizeMm: 2.3, style: { ink: 'grey' } } as const;
  const lines = careSources().map(({ titles, source }) => `${titles.join(', ')}: ${source}.`);
  const drawn = (topMm: number) => {
    let y = topMm;
    return lines.flatMap((words) => {
      const one = paragraph(words, marginMm, y, style);
      y += one.heightMm + 0.6;
      return [{ marks: one.marks, endMm: y }];
    });
  };
  const heightMm = drawn(0).at(-1)?.endMm ?? 0;
  return drawn(bottomMm - heightMm).flatMap(({ marks }) => marks);
}

function inspectionSheet(
  rod: DeliveredRod,
  inspection: readonly InspectionRow[],
  parts: readonly PartRow[],
  paper: PaperName,
): Sheet {
  const size = standingPaper[paper];
  const widthMm = size.widthMm - 2 * marginMm;
  const rows = inspection
    .slice(0, 22)
    .map(({ item, tolerance, found, verdict }) => [
      cut(item, 56),
      cut(tolerance, 28),
      cut(found, 20),
      verdict,
    ]);
  const top = marginMm + 16;
  const partsTop = top + tableHeightMm({ rows }) + 12;
  const foot = size.heightMm - marginMm - 8;
  const partRows = partRowsThatFit(parts, Math.floor((foot - 6 - partsTop) / tableRowMm) - 1);
  const partWidth = widthMm - 90;
  return {
    title: 'Inspection',
    pages: [
      {
        ...size,
        marks: [
          text(marginMm, marginMm + 5, 'Inspection before delivery', { sizeMm: 5, bold: true }),
          text(
            marginMm,
            marginMm + 11,
            [rod.title, rod.facts, `record ${rod.revision}`].filter(Boolean).join(' · '),
          ),
          ...drawTable(
            {
              columns: [
                { title: 'looked at', widthMm: widthMm - 98 },
                { title: 'tolerance', widthMm: 46 },
                { title: 'found', widthMm: 32 },
                { title: 'verdict', widthMm: 20 },
              ],
              rows,
            },
            marginMm,
            top,
          ),
          ...(partRows.length === 0
            ? []
            : [
                text(marginMm, partsTop - 3, 'What it is made of', { sizeMm: 3.6, bold: true }),
                ...drawTable(
                  {
                    columns: [
                      { title: 'part', widthMm: partWidth },
                      { title: 'lot', widthMm: 45 },
                      { title: 'dye', widthMm: 45 },
                    ],
                    rows: partRows,
                  },
                  marginMm,
                  partsTop,
                ),
              ]),
          ...['Inspected by, date', 'Received by, date'].flatMap((words, i): Mark[] => {
            const left = marginMm + i * (widthMm / 2 + 5);
            return [
              line(left, foot, left + 75, foot, { widthMm: 0.2 }),
              text(left, foot + 4, words, { sizeMm: 2.5, ink: 'grey' }),
            ];
          }),
        ],
      },
    ],
  };
}

/** What does not fit is counted, and stands in the record. */
function partRowsThatFit(parts: readonly PartRow[], most: number): string[][] {
  const shown = parts.length > most ? parts.slice(0, Math.max(0, most - 1)) : parts;
  const rows = shown.map(({ what, lot, dye }) => [cut(what, 60), cut(lot, 24), cut(dye, 24)]);
  const more = parts.length - shown.length;
  return more > 0 ? [...rows, [`and ${more} more, in the record`, '', '']] : rows;
}

function cut(words: string, most: number): string {
  return words.length > most ? `${words.slice(0, most - 3)}...` : words;
}

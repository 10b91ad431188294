import { type Mark, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { drawTable } from './table.ts';

export interface ProofSheetInput {
  /** Ready to read: `150 g`, `45°`. */
  hung: string;
  buttAngle: string;
  guidesOn: boolean;
  /** Name, distance outwards and height with their ±, ready to read; the tip first. */
  rows: readonly { name: string; out: string; up: string }[];
}

const how = [
  '1. Hold the rod with the front of its grip at the edge of the bench, the butt at the angle above.',
  '2. Put a small flag of tape at each station. Mark the front of the grip on the wall: all figures count from there.',
  '3. Pencil the predicted places on the wall before the weight is hung, distance outwards and height up.',
  '4. Hang the weight on the tip, slowly and by hand; wait until it is still; mark tip and flags square to the wall.',
  '5. Measure what you saw, write it beside, and enter it at the step. A miss is worth as much as a hit.',
];
const care = [
  'Eye protection on. Stand out of the rod’s plane, never in line with the tip. Ferrules bound.',
  'Raise the load slowly; weight low over the floor, clear of feet. Outdoors: no overhead lines within reach.',
];

/** Where tip and flags will be, on one page with room for what was seen. */
export function proofSheet(
  { hung, buttAngle, guidesOn, rows }: ProofSheetInput,
  { paper, stamp }: { paper: PaperName; stamp: string },
): Sheet {
  const size = standingPaper[paper];
  const widthMm = size.widthMm - 2 * marginMm;
  const tableMm = marginMm + 32;
  const howMm = tableMm + (rows.length + 1) * 12 + 12;
  const marks: Mark[] = [
    text(marginMm, marginMm + 3, `Proof before trust · ${stamp}`, { bold: true }),
    text(marginMm, marginMm + 14, `${hung} on the tip, butt ${buttAngle} above level`, {
      sizeMm: 6,
      bold: true,
    }),
    text(
      marginMm,
      marginMm + 22,
      guidesOn ? 'The rod carries its guides.' : 'The bare blank, without guides.',
    ),
    ...drawTable(
      {
        columns: [
          { title: 'place, from the tip', widthMm: 42 },
          { title: 'outwards', widthMm: 40 },
          { title: 'up', widthMm: 40 },
          { title: 'seen outwards', widthMm: (widthMm - 122) / 2 },
          { title: 'seen up', widthMm: (widthMm - 122) / 2 },
        ],
        rows: rows.map(({ name, out, up }) => [name, out, up, '', '']),
        rowMm: 12,
      },
      marginMm,
      tableMm,
    ),
    ...how.map((words, i) => text(marginMm, howMm + i * 7, words)),
    ...care.map((words, i) => text(marginMm, howMm + 42 + i * 6, words, { bold: true })),
  ];
  return { title: 'Proof before trust', pages: [{ ...size, marks }] };
}

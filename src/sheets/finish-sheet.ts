import type { BatchPlan } from '../engine/finish/batches.ts';
import { batchParts } from '../words/batch.ts';
import { finishFaults } from '../words/finish-faults.ts';
import { line, type Mark, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { drawTable } from './table.ts';

export interface FinishSheetInput {
  product: string;
  roomC: number;
  coatMl: number;
  batch: BatchPlan | undefined;
  /** What is due, and when, ready to read: clock times after the first coat, else hours after brushing. */
  due: readonly { what: string; when: string }[];
}

/** Mix, times, caution and faults on one page, to be read at arm's length. */
export function finishSheet(
  { product, roomC, coatMl, batch, due }: FinishSheetInput,
  { paper, stamp }: { paper: PaperName; stamp: string },
): Sheet {
  const size = standingPaper[paper];
  const widthMm = size.widthMm - 2 * marginMm;
  const mixMm = marginMm + 22;
  const dueMm = mixMm + 30;
  const faultsMm = dueMm + (due.length + 1) * 8 + 14;
  const mix = batch
    ? `${batchParts(batch)}, ${batch.batches} ${batch.batches === 1 ? 'batch' : 'batches'} a coat`
    : 'mix: see the screen';
  const large = { sizeMm: 6, bold: true };
  const marks: Mark[] = [
    text(marginMm, marginMm + 3, `Finish · ${stamp}`, { bold: true }),
    text(
      marginMm,
      marginMm + 10,
      `${product} at ${roomC} °C in the room; one coat takes ${coatMl.toFixed(1)} ml on the rod.`,
    ),
    text(marginMm, mixMm, mix, large),
    text(
      marginMm,
      mixMm + 8,
      'Warm the bottles, stir slowly to the walls for 2 to 3 min, rest 2 min, pour out on foil.',
    ),
    text(
      marginMm,
      mixMm + 14,
      'Gloves of thick nitrile, no skin contact, no flame near solvents; the data sheet comes first.',
      {
        bold: true,
      },
    ),
    ...drawTable(
      {
        columns: [
          { title: 'what', widthMm: 88 },
          { title: 'when', widthMm: 62 },
          { title: 'done', widthMm: widthMm - 150, align: 'end' },
        ],
        rows: due.map(({ what, when }) => [what, when, '']),
        rowMm: 8,
        textMm: 4.3,
      },
      marginMm,
      dueMm,
    ),
    text(marginMm, faultsMm, 'What went wrong, and the usual remedy (common practice, no source)', {
      bold: true,
    }),
  ];
  const faultMm = Math.min(13, (size.heightMm - marginMm - faultsMm - 7) / finishFaults.length);
  finishFaults.forEach(({ fault, cause, remedy }, index) => {
    const y = faultsMm + 7 + index * faultMm;
    marks.push(
      text(marginMm, y, `${fault}: ${cause}`, { sizeMm: 2.9, bold: true }),
      text(marginMm, y + 4.2, remedy, { sizeMm: 2.7 }),
      line(marginMm, y + 7.5, marginMm + widthMm, y + 7.5, { widthMm: 0.1, ink: 'grey' }),
    );
  });
  return { title: 'Finish', pages: [{ ...size, marks }] };
}

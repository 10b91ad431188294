import { bagSheet } from '../engine/wall-mark/bag-marks.ts';
import { checkRules } from './check-rules.ts';
import { line, type Mark, type Page, type Sheet, text } from './drawing.ts';
import { lyingPaper, marginMm, type PaperName } from './paper-size.ts';
import { correctPage, type PrintFactors, truePrint } from './print-correction.ts';
import { wallMarkShape } from './wall-marks-sheet.ts';

const how = [
  'Lay two-footed guides apart inside the frame, feet down. No shadow of hand or telephone, no flash; light from the side.',
  'Picture from straight above, all four marks in it and the sheet filling it; the sheet flat, without folds.',
];

/** The reference sheet for a telephone's picture of the bag, at true size. */
export function bagReferenceSheet({
  paper,
  stamp,
  factors = truePrint,
}: {
  paper: PaperName;
  stamp: string;
  factors?: PrintFactors;
}): Sheet {
  const size = lyingPaper[paper];
  const [middleXMm, middleYMm] = [size.widthMm / 2, size.heightMm / 2 - 4];
  const x = (atM: number) => middleXMm + 1000 * atM;
  const y = (atM: number) => middleYMm - 1000 * atM;
  const { halfWidthM: across, halfHeightM: up, radiusM, marks } = bagSheet;
  const edge = (x1: number, y1: number, x2: number, y2: number): Mark =>
    line(x(x1), y(y1), x(x2), y(y2), { ink: 'grey', widthMm: 0.15, dashMm: [1, 3], name: 'frame' });
  const page: Page = {
    ...size,
    marks: [
      text(marginMm, marginMm + 3, `Reference sheet for guides · ${stamp}`, { bold: true }),
      ...how.map((words, index) => text(marginMm, marginMm + 8 + 4.4 * index, words, { sizeMm: 2.8 })),
      ...marks.map(({ number, xM, yM }) => wallMarkShape(number, x(xM), y(yM), 1000 * radiusM)),
      edge(-across - frameOffM, up + frameOffM, across + frameOffM, up + frameOffM),
      edge(-across - frameOffM, -up - frameOffM, across + frameOffM, -up - frameOffM),
      ...checkRules(size),
    ],
  };
  return { title: 'Reference sheet', pages: [correctPage(page, factors)] };
}

/** The frame is drawn outside what is read, so that it is not taken for a wire. */
const frameOffM = 0.002;

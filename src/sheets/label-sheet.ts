import { type LabelStock, labelPlaces } from '../engine/delivery/label-stock.ts';
import { type Mark, type Sheet, text } from './drawing.ts';
import { fittedWords } from './fitted-words.ts';
import { standingPaper } from './paper-size.ts';
import { correctPage, type PrintFactors, truePrint } from './print-correction.ts';
import { qrShape } from './qr-shape.ts';

export interface RodLabel {
  /** What the code says, too. */
  number: string;
  /** Most telling first; as many as the label is high. Empty ones are left out. */
  lines: readonly string[];
}
export interface LabelSheetOptions {
  stock: LabelStock;
  firstFree: number;
  count: number;
  factors?: PrintFactors;
}

/** Labels on bought sheets, from the first free place on. Nothing else is printed: the sheet is used again. */
export function labelSheet(label: RodLabel, { stock, firstFree, count, factors }: LabelSheetOptions): Sheet {
  const size = standingPaper[stock.paper];
  const page = { widthM: size.widthMm / 1000, heightM: size.heightMm / 1000 };
  const places = labelPlaces(stock, page, { firstFree, count });
  const pages = Array.from({ length: 1 + Math.max(0, ...places.map((place) => place.page)) }, (_, index) => {
    const marks = places
      .filter((place) => place.page === index)
      .flatMap(({ leftM, topM }) => drawLabel(label, stock, leftM * 1000, topM * 1000));
    return correctPage({ ...size, marks }, factors ?? truePrint);
  });
  return { title: `Labels ${label.number}`, pages };
}

/** Sheets of labels creep in the printer; nothing stands closer to a label's edge. */
const edgeMm = 1.5;

function drawLabel({ number, lines }: RodLabel, stock: LabelStock, leftMm: number, topMm: number): Mark[] {
  const [widthMm, heightMm] = [stock.widthM * 1000, stock.heightM * 1000];
  const codeMm = Math.min(heightMm - 2 * edgeMm, 0.42 * widthMm, 26);
  const wordsMm = leftMm + edgeMm + codeMm;
  const roomMm = leftMm + widthMm - edgeMm - wordsMm;
  const numberMm = Math.min(4.6, heightMm / 4);
  const lineMm = Math.min(2.9, heightMm / 6);
  const fit = Math.floor((heightMm - 2 * edgeMm - numberMm) / (lineMm * 1.35));
  const shown = lines.filter((words) => words !== '').slice(0, fit);
  return [
    qrShape(number, leftMm + edgeMm, topMm + (heightMm - codeMm) / 2, codeMm),
    text(wordsMm, topMm + edgeMm + numberMm * 0.8, fittedWords(number, roomMm, numberMm, true), {
      sizeMm: numberMm,
      bold: true,
    }),
    ...shown.map((words, i) =>
      text(
        wordsMm,
        topMm + edgeMm + numberMm + lineMm * (0.95 + i * 1.35),
        fittedWords(words, roomMm, lineMm),
        {
          sizeMm: lineMm,
        },
      ),
    ),
  ];
}

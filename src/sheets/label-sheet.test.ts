import { expect, test } from 'vitest';
import { openCvReady } from '../../test/support/open-cv.ts';
import { boxesOverlap, textBox } from '../../test/support/text-boxes.ts';
import {
  type LabelStockId,
  labelPlaces,
  labelStockNames,
  labelStocks,
} from '../engine/delivery/label-stock.ts';
import { type Page, plainText, type Shape, type Text } from './drawing.ts';
import { labelSheet } from './label-sheet.ts';
import { standingPaper } from './paper-size.ts';

const ids = Object.keys(labelStocks) as LabelStockId[];
const label = {
  number: 'K3P9X2',
  lines: [
    'W'.repeat(90),
    '9 ft, 4 sections, line 5',
    'for an invented angler',
    'An invented shop',
    '1 March 2026',
  ],
};
const texts = ({ marks }: Page) => marks.filter((mark): mark is Text => mark.kind === 'text');
const codes = ({ marks }: Page) => marks.filter((mark): mark is Shape => mark.kind === 'shape');
const places = (id: LabelStockId, count: number, firstFree = 1) => {
  const size = standingPaper[labelStocks[id].paper];
  const page = { widthM: size.widthMm / 1000, heightM: size.heightMm / 1000 };
  return labelPlaces(labelStocks[id], page, { firstFree, count });
};

test.each(ids)('%s: the labels fill the page evenly, as many as its name says', (id) => {
  const { across, down, widthM, heightM, paper } = labelStocks[id];
  const all = places(id, across * down);
  const size = standingPaper[paper];
  const [first, last] = [all[0], all[all.length - 1]];
  expect(last.page).toBe(0);
  expect(first.leftM).toBeGreaterThanOrEqual(0);
  expect(first.leftM).toBeCloseTo(size.widthMm / 1000 - last.leftM - widthM, 9);
  expect(first.topM).toBeCloseTo(size.heightMm / 1000 - last.topM - heightM, 9);
  expect(labelStockNames[id]).toContain(` ${across * down} on `);
});

test('a begun sheet is used from its first free place on, then a whole one', () => {
  const [a, b, c] = places('a4-21', 3, 20);
  expect([a.page, b.page, c.page]).toEqual([0, 0, 1]);
  // Three across: place 20 is the second of the last row.
  expect(a.topM).toBeCloseTo(b.topM, 9);
  expect(b.leftM - a.leftM).toBeCloseTo(0.066, 9);
  expect(c.leftM).toBeCloseTo(places('a4-21', 1)[0].leftM, 9);
  expect(labelSheet(label, { stock: labelStocks['a4-21'], firstFree: 20, count: 3 }).pages).toHaveLength(2);
});

test.each(ids)('%s: nothing stands over a label’s edge or on the code, whatever the rod is called', (id) => {
  const stock = labelStocks[id];
  const [page] = labelSheet(label, { stock, firstFree: 2, count: 1 }).pages;
  const [{ leftM, topM }] = places(id, 1, 2);
  const box = {
    leftMm: leftM * 1000,
    topMm: topM * 1000,
    rightMm: (leftM + stock.widthM) * 1000,
    bottomMm: (topM + stock.heightM) * 1000,
  };
  const code = extent(codes(page)[0]);
  for (const one of [...texts(page).map(textBox), code]) {
    expect(one.leftMm).toBeGreaterThan(box.leftMm);
    expect(one.rightMm).toBeLessThan(box.rightMm);
    expect(one.topMm).toBeGreaterThan(box.topMm);
    expect(one.bottomMm).toBeLessThan(box.bottomMm);
  }
  for (const words of texts(page))
    expect(boxesOverlap(textBox(words), code), plainText(words.pieces)).toBe(false);
  const [first, second] = texts(page).map(textBox);
  expect(boxesOverlap(first, second)).toBe(false);
});

test.each(ids)('%s: OpenCV reads the build’s number from the code, at 300 dots an inch', async (id) => {
  const [page] = labelSheet(label, { stock: labelStocks[id], firstFree: 1, count: 1 }).pages;
  expect(await readCode(codes(page)[0])).toBe('K3P9X2');
});

function extent({ rings }: Shape) {
  const all = rings.flat();
  const [xs, ys] = [all.map(({ xMm }) => xMm), all.map(({ yMm }) => yMm)];
  return {
    leftMm: Math.min(...xs),
    rightMm: Math.max(...xs),
    topMm: Math.min(...ys),
    bottomMm: Math.max(...ys),
  };
}

/** The code inked on white paper and read back by a reader that is not ours. */
async function readCode(code: Shape): Promise<string> {
  const { cv } = await openCvReady();
  const { leftMm, rightMm, topMm, bottomMm } = extent(code);
  const [dots, borderMm] = [300 / 25.4, 3];
  const width = Math.ceil((rightMm - leftMm + 2 * borderMm) * dots);
  const height = Math.ceil((bottomMm - topMm + 2 * borderMm) * dots);
  const paper = new cv.Mat(height, width, cv.CV_8UC1, new cv.Scalar(255));
  const at = (mm: number, from: number) => Math.round((mm - from + borderMm) * dots);
  for (const [a, , c] of code.rings) {
    for (let y = at(a.yMm, topMm); y < at(c.yMm, topMm); y++)
      for (let x = at(a.xMm, leftMm); x < at(c.xMm, leftMm); x++) paper.data[y * width + x] = 0;
  }
  const large = new cv.Mat();
  cv.resize(paper, large, new cv.Size(0, 0), 3, 3, cv.INTER_NEAREST);
  const reader = new cv.QRCodeDetector();
  const words = reader.detectAndDecode(large) as unknown as string;
  for (const one of [paper, large, reader]) one.delete();
  return words;
}

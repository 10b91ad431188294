import { expect, test } from 'vitest';
import { boxesOverlap, textBox } from '../../test/support/text-boxes.ts';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { fourPiece } from '../engine/bench/test-bench.ts';
import { plusMinusOfMarks } from '../engine/flow/build-sureness.ts';
import { listMarks, marksInOrder, withPlusMinus } from '../engine/marks/marks-list.ts';
import { plusMinusInWords, tapeWriter } from '../words/places.ts';
import { plainText, type Sheet, type Text } from './drawing.ts';
import { marksSheet } from './marks-sheet.ts';
import { stripsSheet } from './strips-sheet.ts';
import { turnsSheet } from './turns-sheet.ts';

const lineSide = {
  angleRad: Math.PI / 4,
  reference: 'a pencil line that runs along the seam of the ferrule',
  method: 'soft side, two loads, read on a dial gauge at mid-span',
};
const blank = assembleBlank(fourPiece().sections.map((section) => ({ ...section, lineSide })));
const stations = [0.12, 0.25, 0.4, 0.6, 0.95, 1.3];
const list = listMarks(
  blank,
  stations.map((fromTipM) => ({
    name: 'snake 1',
    fromTipM,
    slack: { towardsTipM: 0.004, towardsButtM: 0.007 },
  })),
  '1/32 in',
);
const spread = {
  blanks: 10,
  tried: 10,
  plusMinusM: [0, 0.017, 0.041, 0, 0.101, 0],
  costOfKeeping: 0.1,
  expectedCost: 0.1 / 3,
};

const texts = ({ pages }: Sheet) =>
  pages.map(({ marks }) => marks.filter((mark): mark is Text => mark.kind === 'text'));
const words = (sheet: Sheet) =>
  texts(sheet)
    .flat()
    .map(({ pieces }) => plainText(pieces));

test('given marks have no ±: the first, the stripping guide, the pinned one; and none where nothing was placed', () => {
  const pinned = [{ index: 3, fromTipM: 0.6 }];
  expect(plusMinusOfMarks({ pinned }, spread)).toEqual([
    undefined,
    0.017,
    0.041,
    undefined,
    0.101,
    undefined,
  ]);
  expect(plusMinusOfMarks({ pinned }, { ...spread, blanks: 1 }).every((m) => m === undefined)).toBe(true);
});

test('a ± is written up to the next tick, never below what is known', () => {
  expect(plusMinusInWords(0.0171, tapeWriter('1 mm'))).toBe('±18');
  expect(plusMinusInWords(0.003175, tapeWriter('1/8 in'))).toBe('±1⁄8');
  expect(plusMinusInWords(0.0032, tapeWriter('1/32 in'))).toBe('±1⁄4');
});

test('the list on paper has every ± and each section’s line side, and nothing lies on anything or leaves the page', () => {
  const sure = withPlusMinus(list, plusMinusOfMarks({}, spread));
  expect(marksInOrder(sure).map(({ plusMinusM }) => plusMinusM)).toEqual(plusMinusOfMarks({}, spread));
  for (const paper of ['a4', 'letter'] as const) {
    const sheet = marksSheet(sure, { paper, stamp: 'x' });
    expect(words(sheet).filter((text) => text.startsWith('±'))).toHaveLength(4);
    expect(words(sheet).filter((text) => /^line side 45° from a pencil line/.test(text))).toHaveLength(4);
    sheet.pages.forEach(({ widthMm, heightMm }, page) => {
      const boxes = texts(sheet)[page].map(textBox);
      boxes.forEach((box, k) => {
        expect(box.leftMm).toBeGreaterThan(5);
        expect(box.rightMm).toBeLessThan(widthMm - 5);
        expect(box.bottomMm).toBeLessThan(heightMm - 5);
        expect(boxes.slice(k + 1).filter((other) => boxesOverlap(box, other))).toEqual([]);
      });
    });
  }
});

test('every strip says the line side at its head, inside the page', () => {
  const sheet = stripsSheet(blank, list, [], { paper: 'letter', stamp: 'x' });
  const heads = words(sheet).filter((text) => /strip \d of \d/.test(text));
  expect(heads.length).toBeGreaterThan(4);
  for (const head of heads) expect(head).toMatch(/· line side 45° from a pencil line/);
  sheet.pages.forEach(({ widthMm }, page) => {
    for (const one of texts(sheet)[page]) expect(textBox(one).rightMm).toBeLessThan(widthMm - 5);
  });
});

test('the sheet of turns has a box for every step under both loads', () => {
  const turns = Array.from({ length: 8 }, (_, k) => ({
    id: `${k}`,
    turnRad: (k * Math.PI) / 4,
    dropsM: [undefined, undefined] as const,
  }));
  const section = {
    id: 't',
    sectionId: 's',
    held: 'span' as const,
    loadsKg: [0, 0.1] as const,
    sigmaM: 1e-4,
    turns,
  };
  const sheet = turnsSheet(
    ['Tip', 'Butt'].map((name) => ({ name, section })),
    { paper: 'a4', stamp: 'x' },
  );
  expect(words(sheet).filter((text) => /^(0|45|90|135|180|225|270|315)°$/.test(text))).toHaveLength(16);
  expect(words(sheet)).toContain('under 100 g');
  sheet.pages.forEach(({ widthMm }, page) => {
    for (const one of texts(sheet)[page]) expect(textBox(one).rightMm).toBeLessThan(widthMm - 5);
  });
});

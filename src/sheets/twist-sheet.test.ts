import { expect, test } from 'vitest';
import { twistSteps } from '../words/twist-steps.ts';
import { shopWriter } from '../words/writer.ts';
import { type Mark, plainText } from './drawing.ts';
import { standingPaper } from './paper-size.ts';
import { twistSheet } from './twist-sheet.ts';

const wordsOf = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.kind === 'text' ? plainText(mark.pieces) : []));
const sheet = (system: 'inch' | 'mm', paper: 'a4' | 'letter' = 'a4') =>
  twistSheet(
    { barFromTipM: 0.0254, weights: [{ massKg: 0.1, armM: 0.1524 }] },
    { paper, stamp: 'Demo', writer: shopWriter({ system }) },
  );

test('every step of the screen stands on the paper; what is known is filled in, in the shop’s units', () => {
  const [page] = sheet('inch').pages;
  const words = wordsOf(page.marks);
  for (const step of twistSteps) expect(words.some((one) => one.endsWith(step))).toBe(true);
  expect(words).toEqual(expect.arrayContaining(['100 g', '6 in', '1 in']));
  expect(wordsOf(sheet('mm').pages[0].marks)).toContain('152 mm');
});

test('nothing runs off the paper', () => {
  for (const paper of ['a4', 'letter'] as const) {
    const { widthMm, heightMm } = standingPaper[paper];
    for (const mark of sheet('inch', paper).pages[0].marks) {
      if (mark.kind === 'text') expect(mark.xMm).toBeLessThan(widthMm - 8);
      if (mark.kind === 'line') {
        expect(Math.max(mark.x1Mm, mark.x2Mm)).toBeLessThanOrEqual(widthMm - 5);
        expect(Math.max(mark.y1Mm, mark.y2Mm)).toBeLessThanOrEqual(heightMm - 5);
      }
    }
  }
});

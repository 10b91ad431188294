import { expect, test } from 'vitest';
import { plainText } from './drawing.ts';
import { marginMm, standingPaper } from './paper-size.ts';
import { proofSheet } from './proof-sheet.ts';
import { textWidthMm } from './text-width.ts';

const rows = ['tip', 'flag 1, 16 1⁄8 in', 'flag 2, 32 1⁄4 in', 'flag 3, 48 3⁄8 in'].map((name) => ({
  name,
  out: '170 3⁄8 in ± 3 1⁄8 in',
  up: '34 5⁄8 in ± 11 7⁄8 in',
}));

test('one page on either paper, every line inside its margins', () => {
  for (const paper of ['a4', 'letter'] as const) {
    const { pages } = proofSheet(
      { hung: '150 g', buttAngle: '45.0°', guidesOn: true, rows },
      { paper, stamp: 'x' },
    );
    expect(pages).toHaveLength(1);
    const { widthMm, heightMm } = standingPaper[paper];
    for (const mark of pages[0].marks) {
      if (mark.kind !== 'text' || mark.align !== 'start') continue;
      const endMm = mark.xMm + textWidthMm(mark.pieces, mark.sizeMm, mark.bold);
      expect(endMm, plainText(mark.pieces)).toBeLessThanOrEqual(widthMm - marginMm);
      expect(mark.yMm).toBeLessThanOrEqual(heightMm - marginMm);
    }
  }
});

import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../engine/numerics/seeded-random.ts';
import { type LabelledMark, placeLabels } from './place-labels.ts';

const mark = (xPx: number, yPx: number, change: Partial<LabelledMark> = {}): LabelledMark => ({
  xPx,
  yPx,
  outX: 0,
  outY: -1,
  widthPx: 14,
  heightPx: 12,
  ...change,
});
const sheet = { widthPx: 400, heightPx: 300, lines: [] };

describe('numbers beside marks', () => {
  it('stands straight out from a lone mark', () => {
    expect(placeLabels([mark(100, 100)], sheet)).toEqual([{ xPx: 100, yPx: 87, distancePx: 13 }]);
  });
  it('never lets two numbers overlap, however crowded', () => {
    const random = seededRandom(3);
    for (let round = 0; round < 50; round++) {
      const marks = Array.from({ length: 12 }, () => mark(100 + 90 * random(), 100 + 60 * random()));
      const placed = placeLabels(marks, sheet).filter((place) => place !== undefined);
      expect(placed.length).toBeGreaterThan(3);
      placed.forEach((a, i) => {
        for (const b of placed.slice(i + 1)) {
          expect(Math.abs(a.xPx - b.xPx) >= 16 || Math.abs(a.yPx - b.yPx) >= 12).toBe(true);
        }
      });
    }
  });
  it('keeps off the drawn lines', () => {
    const lines = Array.from({ length: 80 }, (_, i) => ({ xPx: 60 + i, yPx: 87 }));
    const [place] = placeLabels([mark(100, 100)], { ...sheet, lines });
    expect(Math.abs(place!.yPx - 87)).toBeGreaterThanOrEqual(6);
  });
  it('stays on the sheet', () => {
    const [place] = placeLabels([mark(100, 3)], sheet);
    expect(place!.yPx).toBeGreaterThanOrEqual(6);
  });
  it('gives the one that matters its place first, and never leaves it out', () => {
    const marks = [mark(100, 100), mark(104, 100), mark(108, 100, { first: true })];
    expect(placeLabels(marks, sheet)[2]).toEqual({ xPx: 108, yPx: 87, distancePx: 13 });
    const tiny = { widthPx: 5, heightPx: 5, lines: [] };
    expect(placeLabels([mark(2, 2), mark(3, 3, { first: true })], tiny)).toEqual([
      undefined,
      expect.anything(),
    ]);
  });
});

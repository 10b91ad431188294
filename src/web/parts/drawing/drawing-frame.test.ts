import { describe, expect, it } from 'vitest';
import { drawingFrame, extentOf } from './drawing-frame.ts';

const extent = { lowXM: -0.3, highXM: 2.1, lowYM: -0.4, highYM: 1.2 };
const room = { widthPx: 800, mostHeightPx: 500, marginPx: 10 };

describe('the drawing’s frame', () => {
  it('has one scale for both directions', () => {
    const frame = drawingFrame(extent, room);
    expect(frame.xPx(0) - frame.xPx(1)).toBeCloseTo(frame.pxPerM, 9);
    expect(frame.yPx(0) - frame.yPx(1)).toBeCloseTo(frame.pxPerM, 9);
  });
  it('holds the whole extent, in a wide room as in a narrow one', () => {
    for (const widthPx of [360, 800, 1600]) {
      const frame = drawingFrame(extent, { ...room, widthPx });
      for (const x of [extent.lowXM, extent.highXM]) {
        expect(frame.xPx(x)).toBeGreaterThanOrEqual(0);
        expect(frame.xPx(x)).toBeLessThanOrEqual(widthPx);
      }
      expect(frame.yPx(extent.highYM)).toBeGreaterThanOrEqual(0);
      expect(frame.yPx(extent.lowYM)).toBeLessThanOrEqual(frame.heightPx);
      expect(frame.heightPx).toBeLessThanOrEqual(room.mostHeightPx + 1);
    }
  });
  it('points the rod left: what is further out stands further left', () => {
    const frame = drawingFrame(extent, room);
    expect(frame.xPx(2)).toBeLessThan(frame.xPx(0));
  });
  it('finds a place in the rod’s plane again from its pixel', () => {
    const frame = drawingFrame(extent, room);
    expect(frame.xM(frame.xPx(1.234))).toBeCloseTo(1.234, 9);
    expect(frame.yM(frame.yPx(-0.321))).toBeCloseTo(-0.321, 9);
  });
});

describe('the extent', () => {
  it('holds every shape and point with the room asked for', () => {
    const shape = { xM: [0, 1, 1.5], yM: [0, 0.8, -0.2] };
    expect(extentOf([shape], [{ xM: -0.3, yM: 0.1 }], 0.1)).toEqual({
      lowXM: -0.4,
      highXM: 1.6,
      lowYM: expect.closeTo(-0.3, 12),
      highYM: 0.9,
    });
  });
});

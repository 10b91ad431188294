import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inside, lookingAt, panned, toPixel, toScreen, wholeView, zoomed } from './photo-frame.ts';

const size = fc.record({
  widthPx: fc.integer({ min: 50, max: 9000 }),
  heightPx: fc.integer({ min: 50, max: 9000 }),
});
const stage = fc.record({
  widthPx: fc.integer({ min: 200, max: 2000 }),
  heightPx: fc.integer({ min: 200, max: 1200 }),
});
const place = fc.tuple(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.double({ min: 0, max: 1, noNaN: true }),
);

describe('a picture on its stage', () => {
  test('forward and back agree, however it was zoomed and moved', () => {
    fc.assert(
      fc.property(
        size,
        stage,
        place,
        fc.double({ min: 0.2, max: 9, noNaN: true }),
        (picture, room, [u, v], by) => {
          const about = { x: u * room.widthPx, y: v * room.heightPx };
          const view = panned(
            zoomed(wholeView(picture, room), by, about, picture, room),
            30,
            -40,
            picture,
            room,
          );
          const at: [number, number] = [u * (picture.widthPx - 1), v * (picture.heightPx - 1)];
          const back = toPixel(view, toScreen(view, at));
          expect(Math.hypot(back[0] - at[0], back[1] - at[1])).toBeLessThan(1e-6);
        },
      ),
      { seed: 1 },
    );
  });
  test('zooming in keeps the place under the finger where the picture is larger than the stage', () => {
    const [picture, room] = [
      { widthPx: 4000, heightPx: 3000 },
      { widthPx: 800, heightPx: 600 },
    ];
    const about = { x: 300, y: 200 };
    const before = wholeView(picture, room);
    const after = zoomed(before, 3, about, picture, room);
    expect(toPixel(after, about)[0]).toBeCloseTo(toPixel(before, about)[0], 6);
    expect(toPixel(after, about)[1]).toBeCloseTo(toPixel(before, about)[1], 6);
  });
  test('is never lost off the stage, and never smaller than whole', () => {
    fc.assert(
      fc.property(size, stage, fc.integer({ min: -9999, max: 9999 }), (picture, room, far) => {
        const view = panned(
          zoomed(wholeView(picture, room), 4, { x: 0, y: 0 }, picture, room),
          far,
          far,
          picture,
          room,
        );
        const [right, bottom] = [
          view.leftPx + view.scale * picture.widthPx,
          view.topPx + view.scale * picture.heightPx,
        ];
        expect(right).toBeGreaterThan(1);
        expect(bottom).toBeGreaterThan(1);
        expect(view.leftPx).toBeLessThan(room.widthPx - 1);
        expect(zoomed(view, 1e-9, { x: 9, y: 9 }, picture, room).scale).toBeCloseTo(
          wholeView(picture, room).scale,
          9,
        );
      }),
      { seed: 2 },
    );
  });
  test('is brought to a place of it', () => {
    const picture = { widthPx: 4000, heightPx: 3000 };
    const room = { widthPx: 800, heightPx: 600 };
    const view = lookingAt([2000, 1500], wholeView(picture, room), picture, room);
    expect(toScreen(view, [2000, 1500])).toEqual({ x: 400, y: 300 });
    expect(inside([-4, 5000], picture)).toEqual([0, 2999]);
  });
});

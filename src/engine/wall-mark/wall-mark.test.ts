import { describe, expect, test } from 'vitest';
import {
  wallMarkCells,
  wallMarkNumbers,
  wallMarkOutlines,
  wallMarkPose,
  wallMarkRadii,
  wallMarkTeeth,
} from './wall-mark.ts';

const poses = [false, true].flatMap((halfTurn) => [false, true].map((mirrored) => ({ halfTurn, mirrored })));

function differing(a: readonly boolean[], b: readonly boolean[]): number {
  return a.filter((tooth, k) => tooth !== b[k]).length;
}

/** Area with sign: positive counter-clockwise with y up. */
function signedArea(ring: readonly { x: number; y: number }[]): number {
  return ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length];
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
}

describe('the words of the marks', () => {
  test('any two differ in seven cells or more, turned or mirrored, and so does each from itself', () => {
    for (const one of wallMarkNumbers) {
      for (const other of wallMarkNumbers) {
        for (const pose of poses) {
          if (one === other && !pose.halfTurn && !pose.mirrored) continue;
          const apart = differing(wallMarkTeeth(one), wallMarkPose(wallMarkTeeth(other), pose));
          expect(apart, `${one} and ${other}, ${JSON.stringify(pose)}`).toBeGreaterThanOrEqual(7);
        }
      }
    }
  });

  test('every pose undoes itself', () => {
    const cells = wallMarkTeeth(5);
    for (const pose of poses) expect(wallMarkPose(wallMarkPose(cells, pose), pose)).toEqual(cells);
  });

  test('no more than four like cells follow each other', () => {
    for (const number of wallMarkNumbers) {
      const teeth = wallMarkTeeth(number);
      const fives = teeth.filter((_, k) =>
        [1, 2, 3, 4].every((n) => teeth[(k + n) % wallMarkCells] === teeth[k]),
      );
      expect(fives).toEqual([]);
    }
  });

  test('a number that no mark has is named', () => {
    expect(() => wallMarkTeeth(25)).toThrow('no mark 25');
  });
});

describe('the outlines', () => {
  test('black area is the ring with its teeth, and a fish of two parts with an eye', () => {
    const { fish, straight, tooth, rim } = wallMarkRadii;
    for (const number of [1, 8, 24]) {
      const teeth = wallMarkTeeth(number).filter(Boolean).length;
      const white = (teeth / wallMarkCells) * tooth ** 2 + (1 - teeth / wallMarkCells) * rim ** 2;
      const [disc, hole, tail, body, eye] = wallMarkOutlines(number).rings.map(signedArea);
      expect((disc + hole) / (Math.PI * (1 - white))).toBeCloseTo(1, 2);
      for (const part of [tail, body]) {
        expect(part).toBeGreaterThan(0.25 * Math.PI * straight ** 2);
        expect(part).toBeLessThan(0.25 * Math.PI * fish ** 2);
      }
      expect(eye / (-Math.PI * 0.04 ** 2)).toBeCloseTo(1, 2);
    }
  });

  test('tail and body are black quarters as far as a reader looks, and stay clear of the teeth', () => {
    const { fish, straight } = wallMarkRadii;
    const [, , tail, body, eye] = wallMarkOutlines(3).rings;
    const inside = (ring: typeof tail, x: number, y: number) =>
      ring.reduce((odd, a, i) => {
        const b = ring[(i + 1) % ring.length];
        return a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x ? !odd : odd;
      }, false);
    for (let degrees = 2; degrees < 360; degrees += 5) {
      const quarter = Math.floor(degrees / 90);
      for (const radius of [0.05, 0.2, straight - 0.005]) {
        const [x, y] = [Math.cos, Math.sin].map((of) => radius * of((degrees * Math.PI) / 180));
        const black = (inside(tail, x, y) || inside(body, x, y)) && !inside(eye, x, y);
        expect(black, `${degrees}° at ${radius}`).toBe(quarter === 0 || quarter === 2);
      }
    }
    for (const { x, y } of [...tail, ...body, ...eye]) expect(Math.hypot(x, y)).toBeLessThan(fish + 1e-9);
  });

  test('mirroring about the fish’s length takes the cells where the pose says', () => {
    // Cell k's middle at angle φ goes to 90° − φ.
    const cell = (2 * Math.PI) / wallMarkCells;
    const teeth = wallMarkTeeth(3);
    const seen = wallMarkPose(teeth, { halfTurn: false, mirrored: true });
    for (let k = 0; k < wallMarkCells; k++) {
      const goes = Math.PI / 2 - (k + 0.5) * cell;
      const to = Math.floor((((goes / cell) % wallMarkCells) + wallMarkCells) % wallMarkCells);
      expect(seen[to]).toBe(teeth[k]);
    }
  });
});

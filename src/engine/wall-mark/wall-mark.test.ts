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
  test('black area is the ring with its teeth and the bow’s two triangles', () => {
    const { bow, tooth, rim } = wallMarkRadii;
    for (const number of [1, 8, 24]) {
      const teeth = wallMarkTeeth(number).filter(Boolean).length;
      const white = (teeth / wallMarkCells) * tooth ** 2 + (1 - teeth / wallMarkCells) * rim ** 2;
      const black = Math.PI * (1 - white) + bow ** 2;
      const drawn = wallMarkOutlines(number).rings.reduce((sum, ring) => sum + signedArea(ring), 0);
      expect(drawn).toBeGreaterThan(0.995 * black);
      expect(drawn).toBeLessThan(1.005 * black);
    }
  });

  test('mirroring about the bow’s black diagonal takes the cells where the pose says', () => {
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

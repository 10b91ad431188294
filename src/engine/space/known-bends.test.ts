import { expect, test } from 'vitest';
import { assertGroup } from '../../../reference/cases/check.ts';
import {
  bendOf45Degrees,
  bowPushedOutOfPlane,
  lateralBuckling,
  twistInstabilities,
} from '../../../reference/cases/space.ts';
import { leavesItsPlaneGroup, scipySpaceGroup } from '../../../reference/live/space.ts';
import { spatialRods } from '../../../reference/space/spatial-rods.ts';
import { bendInSpace } from './bend-in-space.ts';

test('the 45° bend is where others found it', () => assertGroup(bendOf45Degrees()));

test('a small push out of a bow’s plane bends and twists it as Castigliano says', () =>
  assertGroup(bowPushedOutOfPlane()));

test('a cantilever held straight by its load leaves its plane at 4.013 √(EI·GJ)/L²', () =>
  assertGroup(lateralBuckling()));

test('shaft and ring leave their shape at Greenhill’s and Michell’s twist, second order in the mesh', () => {
  const [coarse, fine] = [40, 80].map((elements) => twistInstabilities(elements));
  assertGroup(fine);
  fine.checks.forEach(({ ours, theirs }, i) => {
    expect((coarse.checks[i].ours - theirs) / (ours - theirs)).toBeCloseTo(4, 0);
  });
});

test('`stable` turns false where the determinant of small turns out of the plane vanishes', ({ skip }) => {
  const group = leavesItsPlaneGroup({ resolution: 300, place: 0 });
  if ('notRun' in group) return skip(`not run: ${group.notRun}`);
  assertGroup(group);
});

// the quick ones; `npm run verify` runs all six
test('rods in space bend as a boundary-value solve of their statics says', ({ skip }) => {
  const group = scipySpaceGroup(spatialRods.slice(0, 2));
  if ('notRun' in group) return skip(`not run: ${group.notRun}`);
  expect(group.checks).toHaveLength(8);
  assertGroup(group);
});

test('a round cantilever that is straight without load never buckles sideways (it has no softer side)', () => {
  for (const forceN of [1, 4.013, 10, 50]) {
    const { stable, points } = bendInSpace({
      rod: {
        lengthM: 1,
        stiffness: [{ fromTipM: 0, EINm2: 1 }],
        torsion: [{ fromTipM: 0, GJNm2: 0.1 }],
      },
      buttAngleRad: 0,
      load: { tip: { xN: 0, yN: -forceN } },
    });
    expect(stable).toBe(true);
    expect(points[0].zM).toBe(0);
  }
});

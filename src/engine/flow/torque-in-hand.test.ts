import { describe, expect, test } from 'vitest';
import { realisticRods } from '../../../reference/cases/realistic-rods.ts';
import { bendInSpace } from '../space/bend-in-space.ts';
import { spiralAngles } from '../space/spiral.ts';
import { torsionFromRatio } from '../torsion/torsion-ratio.ts';
import { type HandQuestion, type HandReading, torqueInHand } from './torque-in-hand.ts';

const { request } = realisticRods.find(({ name }) => /casting/.test(name))!;
const question: HandQuestion = {
  rod: { ...request.rod, restCurvature: undefined, torsion: torsionFromRatio(request.rod.stiffness, 0.3) },
  buttAngleRad: request.buttAngleRad,
  masses: request.masses,
  guides: request.guides!.map(({ fromTipM, ringHeightM }) => ({ fromTipM, ringHeightM })),
  reel: request.reel!,
  loads: [4, 10].map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
};
const readings = torqueInHand(question);
const at = (arrangement: HandReading['arrangement'], handling: HandReading['handling'], load = 1) =>
  readings.find((row) => row.arrangement === arrangement && row.handling === handling && row.load === load)!;

describe('torque in the hand', () => {
  test('one row for each arrangement, handling and load, all of them stable bends', () => {
    expect(readings).toHaveLength(18);
    for (const { status, stable } of readings) expect([status, stable]).toEqual(['converged', true]);
  });

  test('straight down with all guides on one side there is neither torque nor twist', () => {
    for (const arrangement of ['on-top', 'under'] as const) {
      expect(at(arrangement, 'straight').handTorqueNm).toBeCloseTo(0, 12);
      expect(at(arrangement, 'straight').tipTwistRad).toBeCloseTo(0, 12);
    }
    expect(Math.abs(at('spiral', 'straight').handTorqueNm)).toBeGreaterThan(1e-3);
  });

  test('rolled to the right, guides under push back and guides on top push on', () => {
    expect(at('under', 'rolled').handTorqueNm).toBeGreaterThan(0);
    expect(at('on-top', 'rolled').handTorqueNm).toBeLessThan(0);
    expect(at('on-top', 'rolled').tipTwistRad).toBeGreaterThan(0);
    expect(at('under', 'rolled').tipTwistRad).toBeLessThan(0);
  });

  test('is the moment of the pull beyond the tip-top about the butt’s axis: nothing else acts on a weightless rod', () => {
    const light = { ...question, masses: [], rod: { ...question.rod, massPerLength: undefined } };
    const rows = torqueInHand(light).filter(({ handling, load }) => handling === 'sideways' && load === 1);
    const count = question.guides.length - 1;
    const arrangements = {
      'on-top': () => Math.PI,
      under: () => 0,
      spiral: (i: number) => [0, ...spiralAngles(count, { transitions: 3 })][i],
    };
    for (const { arrangement, handTorqueNm } of rows) {
      const angles = question.guides.map((_, i) => arrangements[arrangement](i));
      const pull = { tensionN: 10, pullAngleRad: -Math.PI / 2, pullSideRad: Math.PI / 12 };
      const { rings } = bendInSpace({
        ...light,
        guides: question.guides.map((guide, i) => ({ ...guide, aroundRad: angles[i] })),
        reel: { ...question.reel, aroundRad: angles[count] },
        load: { line: pull },
      });
      const { xM, yM, zM } = rings[0];
      const [fy, fz] = [-10 * Math.cos(Math.PI / 12), 10 * Math.sin(Math.PI / 12)];
      const [c, s] = [Math.cos(question.buttAngleRad), Math.sin(question.buttAngleRad)];
      const aboutAxis = c * (yM * fz - zM * fy) + s * (0 - xM * fz);
      expect(handTorqueNm).toBeCloseTo(aboutAxis, 3);
    }
  });

  test('a spiral to the left is one to the right in a mirror', () => {
    const right = readings.find((row) => row.arrangement === 'spiral')!;
    const left = torqueInHand({ ...question, spiral: { transitions: 3, by: 'left' } }).find(
      (row) => row.arrangement === 'spiral',
    )!;
    expect(left.handTorqueNm).toBeCloseTo(-right.handTorqueNm, 9);
    expect(left.tipTwistRad).toBeCloseTo(-right.tipTwistRad, 9);
  });
});

describe('the angles of a spiral', () => {
  const degrees = (angles: number[]) => angles.map((angle) => Math.round((angle * 180) / Math.PI));
  test('turn evenly from on top to under', () => {
    expect(degrees(spiralAngles(7, { transitions: 2 }))).toEqual([0, 0, 0, 0, 60, 120, 180]);
    expect(degrees(spiralAngles(7, { transitions: 3, onTop: 2, by: 'left' }))).toEqual([
      0, 0, -45, -90, -135, 180, 180,
    ]);
    expect(degrees(spiralAngles(3, { transitions: 0 }))).toEqual([0, 0, 180]);
  });
});

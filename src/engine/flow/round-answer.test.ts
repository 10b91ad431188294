import { describe, expect, test } from 'vitest';
import { realisticRods } from '../../../reference/cases/realistic-rods.ts';
import { typicalGuide } from '../kinds/guides.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { readRealLine } from '../layout/real-line.ts';
import { guidesRound } from './guides-round.ts';
import { handsAnswer, roundAnswer } from './round-answer.ts';

const guide = typicalGuide('ringed', '8')!;
const set = (...own: { fromTopRad?: number; ringBesideM?: number }[]) =>
  own.map((one) => ({ ...guide, ...one }));
const degrees = (rad: number) => Math.round((rad * 180) / Math.PI);

describe('guides round the blank', () => {
  const spiral = { by: 'right', onTop: 1, transitions: 2 } as const;
  const five = guidesRound({ spiral }, set({}, {}, {}, {}, {}), [0.01, 0.01, 0.01, 0.01, 0.01]);

  test('turn evenly from the top at the reel to under', () => {
    expect(five.map(({ fromTopRad }) => degrees(fromTopRad))).toEqual([180, 180, 120, 60, 0]);
    expect(five.map(({ aroundRad }) => degrees(aroundRad))).toEqual([0, 0, 60, 120, 180]);
  });

  test('to the left are the same from the top, in a mirror', () => {
    const left = guidesRound({ spiral: { ...spiral, by: 'left' } }, set({}, {}, {}, {}, {}), [1, 1, 1, 1, 1]);
    expect(left.map(({ fromTopRad }) => degrees(fromTopRad))).toEqual([180, 180, 120, 60, 0]);
    expect(left.slice(0, 4).map(({ aroundRad }) => degrees(aroundRad) + 0)).toEqual([0, 0, -60, -120]);
  });

  test('stand where the builder says, and a ring beside its foot stands further round and higher', () => {
    const own = guidesRound(
      { spiral },
      set({ fromTopRad: Math.PI / 2 }, { ringBesideM: 0.01 }),
      [0.01, 0.01],
    );
    expect(degrees(own[0].aroundRad)).toBe(90);
    expect(degrees(own[0].proposedRad)).toBe(60);
    expect(own[1].fromTopRad).toBe(0);
    expect(degrees(own[1].aroundRad)).toBe(135);
    expect(own[1].ringHeightM).toBeCloseTo(0.01 * Math.SQRT2, 12);
  });

  test('without a spiral there is nothing to say', () => {
    expect(guidesRound({}, set({}), [0.01])).toEqual([]);
  });
});

const { request } = realisticRods.find(({ name }) => /casting/.test(name))!;
const guides = request.guides!.slice(1);
const fromTipM = guides.map((one) => one.fromTipM);
const ladder = (aroundRad?: number[]): LadderRequest => ({
  rod: { ...request.rod, restCurvature: undefined },
  torsionShare: 0.2,
  buttAngleRad: request.buttAngleRad,
  reel: { ...request.reel!, aroundRad: Math.PI },
  guides: {
    count: guides.length,
    ringHeightsM: guides.map((one) => one.ringHeightM),
    side: 'over',
    aroundRad,
  },
  tipTop: { ringHeightM: request.guides![0].ringHeightM, ...(aroundRad ? { aroundRad: 0 } : {}) },
  ladder: [4, 10].map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
  limits: { lineAngleRad: 0.26, gapM: 0.01, extraBendPerM: 0.05 },
});
const diameters = [
  { fromTipM: 0, outsideM: 0.002 },
  { fromTipM: request.rod.lengthM, outsideM: 0.012 },
];
const turning = guides.map((_, i) => Math.max(0, Math.PI - (guides.length - 1 - i) * (Math.PI / 3)));

describe('a layout round the blank', () => {
  test('turns the line in its rings as the ladder reads it', () => {
    const laid = ladder(turning);
    const read = readLadder(makeLadder(laid), fromTipM);
    roundAnswer({ ladder: laid, fromTipM, diameters }).forEach(({ lineAngleRad, status }, load) => {
      expect(status).toBe('converged');
      read.loads[load].rings.forEach((ring, k) => {
        expect(lineAngleRad[k]).toBeCloseTo(ring.lineAngleRad, 7);
      });
    });
  });

  test('all on top: no torque, no twist; half a turn between two rings: the line runs through the blank there', () => {
    for (const at of roundAnswer({ ladder: ladder(), fromTipM, diameters })) {
      expect(at.handTorqueNm).toBeCloseTo(0, 12);
      expect(at.tipTwistRad).toBe(0);
    }
    const last = guides.length - 1;
    const atOnce = ladder(guides.map((_, i) => (i === last ? Math.PI : 0)));
    const [{ clearM }] = roundAnswer({ ladder: atOnce, fromTipM, diameters });
    expect(clearM[last]).toBeLessThan(-0.002);
    const gentle = roundAnswer({ ladder: ladder(turning), fromTipM, diameters })[0].clearM;
    expect(Math.min(...gentle.slice(-3, -1))).toBeGreaterThan(0);
  });

  test('rubs in its rings: winding in pulls the reel harder, letting out less, by at least the turn in space', () => {
    const laid = ladder(turning);
    const friction = { lowest: 0.2, highest: 0.2 };
    const read = readRealLine({ ladder: laid, fromTipM, friction, diameters })[1];
    const turnRad = readLadder(makeLadder(laid), fromTipM).loads[1].rings.reduce(
      (sum, { lineAngleRad }) => sum + lineAngleRad,
      0,
    );
    const ratio = (direction: 'in' | 'out') =>
      read.rubbing.find(({ friction: one }) => one.direction === direction)!.reelTensionN / 10;
    // Euler's capstan over the whole turn; the bend itself changes a little with the tensions
    expect(Math.log(ratio('in')) / 0.2).toBeCloseTo(turnRad, 0);
    expect(Math.log(ratio('out')) / 0.2).toBeCloseTo(-turnRad, 0);
  });

  test('what the hand feels of it as laid is its own row, and twist has a range where GJ has', () => {
    const laid = ladder(turning);
    const shares = { share: 0.2, low: 0.1, high: 0.4 };
    const spiral = { transitions: 2, onTop: 1, by: 'right' as const };
    const rows = handsAnswer({ ladder: laid, fromTipM, spiral, shares });
    const row = rows.find(
      (one) => one.arrangement === 'spiral' && one.handling === 'straight' && one.load === 1,
    )!;
    expect(row.handTorqueNm).toBeCloseTo(
      roundAnswer({ ladder: laid, fromTipM, diameters })[1].handTorqueNm,
      9,
    );
    const { least, most } = row.twistRangeRad;
    // a quarter of the stiffness in twist; the line moves with the rod and takes some of it back
    const times = Math.max(least / most, most / least);
    expect(times).toBeGreaterThan(2.5);
    expect(times).toBeLessThan(4.01);
  });
});

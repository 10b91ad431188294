import { describe, expect, test } from 'vitest';
import { realisticRods } from '../../../reference/cases/realistic-rods.ts';
import { proposeSpiral, type SpiralQuestion, turnedLadder } from './propose-spiral.ts';
import { roundAnswer } from './round-answer.ts';

const { request } = realisticRods.find(({ name }) => /casting/.test(name))!;
const guides = request.guides!.slice(1);
const last = guides.length - 1;
/** From the reel: on top, two guides over, the others under. */
const evenly = guides.map((_, i) => Math.min(Math.PI, ((last - i) * Math.PI) / 3));
const asked = (fromTopRad: number[], by: 'right' | 'left' = 'right'): SpiralQuestion => ({
  by,
  fromTipM: guides.map(({ fromTipM }) => fromTipM),
  diameters: [
    { fromTipM: 0, outsideM: 0.002 },
    { fromTipM: request.rod.lengthM, outsideM: 0.012 },
  ],
  round: fromTopRad.map((at, i) => ({ fromTopRad: at, proposedRad: evenly[i] })),
  ladder: {
    rod: { ...request.rod, restCurvature: undefined },
    torsionShare: 0.2,
    buttAngleRad: request.buttAngleRad,
    reel: { ...request.reel!, aroundRad: Math.PI },
    guides: {
      count: guides.length,
      ringHeightsM: guides.map((one) => one.ringHeightM),
      side: 'under',
      aroundRad: fromTopRad.map((at) => (by === 'left' ? -1 : 1) * (Math.PI - at)),
    },
    tipTop: { ringHeightM: request.guides![0].ringHeightM, aroundRad: 0 },
    ladder: [4, 10].map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
    limits: { lineAngleRad: 0.26, gapM: 0.01, extraBendPerM: 0.05, firstLineAngleRad: 0.35 },
  },
});
const degrees = (rad: number) => Math.round((rad * 180) / Math.PI);

describe('angles of a spiral are proposed by what it is judged by', () => {
  const badly = evenly.map((at, i) => (i === last - 1 ? (160 * Math.PI) / 180 : at));
  const { now, best } = proposeSpiral(asked(badly))!;

  test('a guide turned badly is turned back: the line turns less and clears more', () => {
    expect(best.turn.ratio).toBeLessThan(now.turn.ratio);
    expect(best.fromTopRad[last - 1]).toBeLessThan(badly[last - 1]);
    expect(best.clearM).toBeGreaterThan(0);
  });

  test('only guides between on top and under turn, to whole steps of 5°, none back', () => {
    best.fromTopRad.forEach((at, i) => {
      if (i < last - 2 || i === last) expect(at).toBe(badly[i]);
      else expect(degrees(at) % 5).toBe(0);
      expect(at).toBeLessThanOrEqual(best.fromTopRad[i - 1] ?? Math.PI);
    });
  });

  test('what is said of it is what the layout reads when so turned', () => {
    const question = asked(badly);
    const ladder = turnedLadder(question, best.fromTopRad);
    const loads = roundAnswer({ ...question, ladder });
    expect(loads[best.turn.load].lineAngleRad[best.turn.ring]).toBe(best.turn.valueRad);
    expect(Math.min(...loads.flatMap(({ clearM }) => clearM))).toBe(best.clearM);
    expect(Math.max(...loads.map(({ handTorqueNm }) => Math.abs(handTorqueNm)))).toBe(best.handTorqueNm);
  });

  test('no neighbour a step of 5° away does better by what decides', () => {
    const again = proposeSpiral(asked(best.fromTopRad))!;
    expect(again.best.fromTopRad.map(degrees)).toEqual(best.fromTopRad.map(degrees));
  });

  test('to the left is the same in a mirror', () => {
    const left = proposeSpiral(asked(badly, 'left'))!.best;
    expect(left.fromTopRad.map(degrees)).toEqual(best.fromTopRad.map(degrees));
    expect(left.handTorqueNm).toBeCloseTo(best.handTorqueNm, 9);
  });

  test('a line that goes over at once leaves nothing to propose', () => {
    const question = asked(evenly);
    const round = question.round.map((one, i) => ({ ...one, proposedRad: i === last ? 0 : Math.PI }));
    expect(proposeSpiral({ ...question, round })).toBeUndefined();
  });
});

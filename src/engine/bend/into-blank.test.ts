/** Against a circle: a slack line's rings on a rod bowed evenly, chord, sagitta and ring height by elementary geometry. */
import { expect, test } from 'vitest';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { bendRequestOf } from '../layout/laid-bend.ts';
import { bend } from './bend.ts';

/** Bowed down, so that rings on top stand outside the circle of radius 1 / bowPerM. */
const bowed = (bowPerM: number, ringHeightM: number): LadderRequest => ({
  rod: {
    lengthM: 1.5,
    stiffness: [{ fromTipM: 0, EINm2: 50 }],
    restCurvature: [{ fromTipM: 0, perM: -bowPerM }],
  },
  buttAngleRad: 0,
  reel: { alongM: -0.1, offsetM: 0.03 },
  guides: { count: 3, ringHeightsM: new Array(3).fill(ringHeightM), side: 'over' },
  tipTop: { ringHeightM },
  contact: { diameters: [{ fromTipM: 0, outsideM: 0.008 }] },
  ladder: [{ tensionN: 1e-9, pullAngleRad: -1 }],
  limits: { lineAngleRad: 1, gapM: 1, extraBendPerM: 1, intoBlankM: 0.001 },
});
const fromTipM = [0.2, 0.5, 1];
const depthsOf = (request: LadderRequest) =>
  readLadder(makeLadder(request), fromTipM).loads[0].spans.map(({ intoBlankM }) => intoBlankM!);

test('on a circle the chord goes as deep as radius, ring height and span say', () => {
  const [bowPerM, ringHeightM] = [0.8, 0.012];
  const depths = depthsOf(bowed(bowPerM, ringHeightM));
  [0.2, 0.3, 0.5].forEach((spanM, k) => {
    const radiusM = 1 / bowPerM;
    const offAxisM = (radiusM + ringHeightM) * Math.cos((spanM * bowPerM) / 2) - radiusM;
    expect(depths[k]).toBeCloseTo(0.004 - offAxisM, 6);
  });
  expect(Math.sign(depths[0])).toBe(-1);
  expect(Math.sign(depths[2])).toBe(1);
});

test('it is 0 where the line, free to lie on the blank, just begins to', () => {
  const touches = (ringHeightM: number) => {
    const ladder = bowed(0.8, ringHeightM);
    const asked = { ...bendRequestOf({ ladder, fromTipM }, ladder.ladder[0]), contact: ladder.contact };
    return bend(asked, { resolution: 120 }).contact!.stretches[2].touches;
  };
  let [low, high] = [0.005, 0.05];
  while (high - low > 1e-5) {
    const middle = (low + high) / 2;
    if (touches(middle)) low = middle;
    else high = middle;
  }
  expect(Math.abs(depthsOf(bowed(0.8, low))[2])).toBeLessThan(5e-5);
});

test('nobody asks, or the guides stand under: it is not read', () => {
  const { contact, ...asked } = bowed(0.8, 0.012);
  const under = { ...asked, contact, guides: { ...asked.guides, side: 'under' as const } };
  for (const request of [asked, under]) {
    expect(readLadder(makeLadder(request), fromTipM).loads[0].spans[2].intoBlankM).toBeUndefined();
  }
});

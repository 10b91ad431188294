import { describe, expect, it } from 'vitest';
import { makeLadder, readLadder } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { ruleLadder } from './rule-reading.ts';

/** Invented rod: 2.4 m, stiffness falling to the tip. */
const request: LadderRequest = {
  rod: {
    lengthM: 2.4,
    stiffness: [
      { fromTipM: 0, EINm2: 0.08 },
      { fromTipM: 1.2, EINm2: 2.2 },
      { fromTipM: 2.4, EINm2: 18 },
    ],
  },
  buttAngleRad: Math.PI / 4,
  reel: { alongM: -0.2, offsetM: 0.05 },
  guides: { count: 4, ringHeightsM: [0.005, 0.006, 0.007, 0.012], side: 'under' },
  tipTop: { ringHeightM: 0.003 },
  ladder: [{ tensionN: 1.5, pullAngleRad: -Math.PI / 2 }],
  limits: { lineAngleRad: 0.26, gapM: 0.01, extraBendPerM: 0.05 },
};
const stations = [0.12, 0.32, 0.8, 1.6];
const outsideM = 0.006;

function ruled(change: Partial<LadderRequest> = {}) {
  const ladder = makeLadder({ ...request, ...change }, { resolution: 400 });
  return ruleLadder(ladder, stations, readLadder(ladder, stations), [{ fromTipM: 0, outsideM }]).loads[0];
}

describe('a layout read on the bench', () => {
  it('a rule reads the criterion’s gap and the rings’ mean height, less half the diameter', () => {
    const load = ruled();
    const heights = [0.003, ...request.guides.ringHeightsM];
    load.ruled.forEach(({ ruleGapM }, span) => {
      const mean = (heights[span] + heights[span + 1]) / 2;
      const least = load.spans[span].gapM + mean - outsideM / 2;
      expect(ruleGapM).toBeLessThan(least + 1e-4);
      expect(ruleGapM).toBeGreaterThan(least - 0.12 * load.spans[span].gapM - 1e-4);
    });
  });
  it('reads the same with the rod turned over in its plane', () => {
    const mirrored = ruled({
      buttAngleRad: -Math.PI / 4,
      guides: { ...request.guides, side: 'over' },
      ladder: [{ tensionN: 1.5, pullAngleRad: Math.PI / 2 }],
    });
    const load = ruled();
    mirrored.ruled.forEach(({ ruleGapM }, span) => {
      expect(ruleGapM).toBeCloseTo(load.ruled[span].ruleGapM, 9);
    });
  });
  it('an unloaded bowed blank has no strain', () => {
    const bowed = { ...request.rod, restCurvature: [{ fromTipM: 0, perM: 0.05 }] };
    const load = ruled({ rod: bowed, ladder: [{ tensionN: 0, pullAngleRad: 0 }] });
    expect(load.strain.percent).toBeLessThan(1e-9);
  });
  it('strain is in proportion to the diameter', () => {
    const ladder = makeLadder(request);
    const reading = readLadder(ladder, stations);
    const thin = ruleLadder(ladder, stations, reading, [{ fromTipM: 0, outsideM: 0.004 }]).loads[0].strain;
    const thick = ruleLadder(ladder, stations, reading, [{ fromTipM: 0, outsideM: 0.008 }]).loads[0].strain;
    expect(thick.percent).toBeCloseTo(2 * thin.percent, 12);
    expect(thick.fromTipM).toBe(thin.fromTipM);
  });
});

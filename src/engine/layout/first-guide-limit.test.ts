import { describe, expect, test } from 'vitest';
import { criterionOf, limitAtGuide, valueAtGuide } from './criteria.ts';
import { makeLadder, readLadder } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { layout } from './layout.ts';
import { defaultLimits } from './layout-defaults.ts';

const rod = {
  lengthM: 1.75,
  stiffness: [
    { fromTipM: 0, EINm2: 0.1 },
    { fromTipM: 0.9, EINm2: 6 },
    { fromTipM: 1.75, EINm2: 34 },
  ],
  massPerLength: [{ fromTipM: 0, kgPerM: 0.03 }],
};
const request: LadderRequest = {
  rod,
  buttAngleRad: Math.PI / 4,
  reel: { alongM: -0.08, offsetM: 0.06 },
  guides: { count: 6, ringHeightsM: [0.01, 0.01, 0.01, 0.012, 0.02, 0.03], side: 'under' },
  tipTop: { ringHeightM: 0.006 },
  ladder: [
    { tensionN: 3, pullAngleRad: -Math.PI / 2 },
    { tensionN: 15, pullAngleRad: -Math.PI / 2 },
  ],
  limits: defaultLimits(1.75),
};
const marks = [0.09, 0.22, 0.42, 0.68, 1.0, 1.35];
const tight = (firstLineAngleRad: number): LadderRequest => {
  return { ...request, limits: { ...request.limits, firstLineAngleRad } };
};
const angle = criterionOf('lineAngle');

describe('the line angle in the first guide from the reel', () => {
  test('counts nowhere without a limit of its own', () => {
    const read = readLadder(makeLadder(request), marks);
    for (const load of read.loads) expect(load.worstOf.lineAngle.index).toBeLessThan(6);
    expect(valueAtGuide(angle, read.loads[1], 5, request.limits)).toBeUndefined();
  });

  test('is the worst where its own limit is tight, and says that limit', () => {
    const { limits } = tight(0.02);
    const read = readLadder(makeLadder(tight(0.02)), marks);
    const turned = read.loads[1].rings[6].lineAngleRad;
    expect(read.worstAt).toMatchObject({ metric: 'lineAngle', index: 6, value: turned, limit: 0.02 });
    expect(read.worst).toBeCloseTo(turned / 0.02, 9);
    expect(valueAtGuide(angle, read.loads[1], 5, limits)).toBe(turned);
    expect([4, 5].map((guide) => limitAtGuide(angle, limits, guide, read.loads[1]))).toEqual([
      limits.lineAngleRad,
      0.02,
    ]);
  });

  test('pulls the next guide toward it where it is what limits the layout', () => {
    const ends = { firstFromTipM: marks[0], strippingFromTipM: marks[5], intervals: 'free' as const };
    const placed = (asked: LadderRequest) => {
      const answer = layout({ ...asked, ...ends });
      if (answer.status === 'refused') throw new Error('refused');
      return answer;
    };
    const [free, held] = [placed(request), placed(tight(0.2))];
    const turnAt = (fromTipM: readonly number[]) =>
      Math.max(...readLadder(makeLadder(request), fromTipM).loads.map(({ rings }) => rings[6].lineAngleRad));
    expect(turnAt(held.fromTipM)).toBeLessThan(turnAt(free.fromTipM) - 0.01);
    expect(held.limits.firstLineAngleRad).toBe(0.2);
  });
});

/**
 * Three pictures of one stand: nothing hung, the weight that lowers the tip by a third of the length, 2.2 times that.
 * Truth by shooting, the camera and what marks and taps get wrong by a model of their own (test/support). Invented
 * blanks; the long run is reference/three-pictures.ts.
 */
import { describe, expect, test } from 'vitest';
import { judgeStiffness } from '../../../test/support/judge-stiffness.ts';
import { randomBlank } from '../../../test/support/simulated-bench.ts';
import { photographStand } from '../../../test/support/simulated-stand.ts';
import { fitBlankOf, weightFor } from '../../../test/support/stand-blank.ts';
import { mishapCodes, withMishap } from '../../../test/support/stand-mishaps.ts';
import { fit } from './fit.ts';
import type { FitCurveSetup, FitSolved } from './request.ts';

const results = [900, 901, 902, 903, 904].map((seed) => {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const thirdKg = weightFor(blank, 1 / 3);
  const pictures = [0, thirdKg, 2.2 * thirdKg].map((hungKg) => ({ hungKg }));
  const { setups, tiltRad } = photographStand(blank, pictures, 7 * seed);
  const solved = (shared: boolean) => {
    const asked = setups.map((setup): FitCurveSetup => (shared ? { ...setup, shared: 'the wall' } : setup));
    const answer = fit({ blank: fitBlankOf(blank, seed + 9), setups: asked }) as FitSolved;
    return { answer, ...judgeStiffness(blank, answer, 3 * thirdKg) };
  };
  return { together: solved(true), alone: solved(false), tiltRad };
});
const together = results.map((result) => result.together);
const sorted = (values: readonly number[]) => values.toSorted((a, b) => a - b);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('three pictures of one stand', () => {
  test('foretell a bend never hung within 0.25 % of the length in the median, 0.6 % at worst', () => {
    const unseen = sorted(together.map((result) => result.unseen));
    expect(unseen[2]).toBeLessThanOrEqual(0.0025);
    expect(unseen[4]).toBeLessThanOrEqual(0.006);
  });
  test('tell more solved together than each with a drift of its own', () => {
    const alone = results.map((result) => result.alone);
    expect(mean(together.map(({ unseen }) => unseen))).toBeLessThan(
      0.8 * mean(alone.map(({ unseen }) => unseen)),
    );
    expect(mean(together.map(({ bandWidth }) => bandWidth))).toBeLessThan(
      mean(alone.map(({ bandWidth }) => bandWidth)),
    );
  });
  test('share one clamp, whose tilt they find', () => {
    for (const { together: one, tiltRad } of results) {
      const [first, ...others] = one.answer.tiltRad;
      for (const tilt of others) expect(Math.abs(tilt - first)).toBeLessThan(0.0003);
      expect(Math.abs(first - tiltRad)).toBeLessThan(0.012);
    }
  });
  test('a clean stand raises no finding, and its band holds the truth on nine tenths', () => {
    expect(together.flatMap(({ answer }) => answer.findings)).toEqual([]);
    expect(mean(together.map(({ held }) => held))).toBeGreaterThanOrEqual(0.9);
  });
});

/** Up by so much, in the plane and in the picture, about 1,500 pixels a metre. */
function moved<P extends { yM: number; px?: readonly [number, number] }>(point: P, byM: number) {
  const [x, y] = point.px!;
  return { yM: point.yM + byM, px: [x, y - 1500 * byM] as const };
}

test('a stretch that strays is named where it could be seen on the drawn curve, else only carried', () => {
  const blank = randomBlank(906, { sweepSigmaPerM: 0 });
  const thirdKg = weightFor(blank, 1 / 3);
  const pictures = [0, thirdKg, 2.2 * thirdKg].map((hungKg) => ({ hungKg }));
  const { setups } = photographStand(blank, pictures, 6342);
  const strayed = (byM: number) => {
    const asked = setups.map((setup, index): FitCurveSetup => {
      const [test] = setup.tests;
      const middle = Math.floor(test.points.length / 2);
      const points = test.points.map((point, i) => ({
        ...point,
        ...moved(point, index === 1 ? byM * Math.exp(-0.5 * ((i - middle) / 4) ** 2) : 0),
      }));
      return { ...setup, shared: 'the wall', tests: [{ ...test, points }] };
    });
    return fit({ blank: fitBlankOf(blank, 915), setups: asked }) as FitSolved;
  };
  const codes = ({ findings }: FitSolved) => findings.map(({ code }) => code);
  expect(codes(strayed(0.003))).toContain('fit/curve-strays');
  expect(codes(strayed(0.0018))).toEqual([]);
});

test('a stretch that the trace says it bridged is neither followed nor named', () => {
  const blank = randomBlank(906, { sweepSigmaPerM: 0 });
  const thirdKg = weightFor(blank, 1 / 3);
  const pictures = [0, thirdKg, 2.2 * thirdKg].map((hungKg) => ({ hungKg }));
  const { setups } = photographStand(blank, pictures, 6342);
  const asked = setups.map((setup, index): FitCurveSetup => {
    const [one] = setup.tests;
    const middle = Math.floor(one.points.length / 2);
    const points = one.points.map((point, i) => {
      const size = index === 0 ? 0 : Math.exp(-0.5 * ((i - middle) / 8) ** 2);
      return { ...point, ...moved(point, 0.006 * size), sigmaM: (point.sigmaM ?? 0) + 0.008 * size };
    });
    return { ...setup, shared: 'the wall', tests: [{ ...one, points }] };
  });
  const answer = fit({ blank: fitBlankOf(blank, 915), setups: asked }) as FitSolved;
  expect(answer.findings.map(({ code }) => code)).toEqual([]);
  expect(judgeStiffness(blank, answer, 3 * thirdKg).stiffnessRms).toBeLessThan(0.08);
});

describe('what goes wrong between pictures is named', () => {
  // the others stand in the long run, `npm run pictures`
  test.each([
    ['clamp', 9901, 1],
    ['level', 9901, 1],
    ['blank', 22000, 0],
    ['swing', 20102, 2],
  ] as const)('%s', (mishap, seed, index) => {
    const { blank, setups } = withMishap(mishap, seed, index);
    const { findings } = fit({ blank: fitBlankOf(blank, seed + 9), setups });
    expect(mishapCodes[mishap]).toContain(findings[0]?.code);
  });
});

/**
 * Turned by 2.39°, a metre off 0.9 mm more than straight drifts reach: a tip that swings would explain half of it. By
 * 1.51° in a clamp whose angle nobody gave: straight drifts alone tell half of it.
 */
test.each([
  { seed: 24412, index: 2, trueDeg: 2.39, angleGiven: true },
  { seed: 24425, index: 5, trueDeg: -1.51, angleGiven: false },
])(
  'how far marks hang off level is told, and EI with it: $trueDeg°',
  ({ index, trueDeg, angleGiven, ...of }) => {
    const { blank, setups, seed } = withMishap('level', of.seed, index);
    const asked = setups.map((setup) =>
      angleGiven ? setup : { ...setup, nominalAngleRad: undefined, tiltSigmaRad: undefined },
    );
    const answer = fit({ blank: fitBlankOf(blank, seed + 9), setups: asked }) as FitSolved;
    expect(answer.findings.map(({ code }) => code)).toEqual(['stand/wall-unlevel']);
    const values = answer.findings[0].values as { turnRad: number; plusMinusRad: number };
    const trueRad = (trueDeg * Math.PI) / 180;
    expect(Math.abs(values.turnRad - trueRad)).toBeLessThan(values.plusMinusRad);
    expect(values.plusMinusRad).toBeLessThan(0.005);
    expect(judgeStiffness(blank, answer, 0.3).stiffnessRms).toBeLessThan(0.04);
  },
);

/**
 * A picture of the whole rod and a close-up of its top third, simulated (test/support/simulated-photo.ts) on invented
 * blanks: marks as wrongly placed in both, lens and unevenness in the measure of what the picture covers. Does the
 * joined curve tell small angles near the tip better than the whole alone, and are curves of different bends told
 * apart? JOINED_CURVES sets how many.
 */

import { expect, test } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { type Curve, placeOn, randomBlank, trueCurve } from '../../../test/support/simulated-bench.ts';
import { commonPhoto, photograph } from '../../../test/support/simulated-photo.ts';
import { topShare } from '../../../test/support/taped-rod.ts';
import type { SeenPoint } from './align-curve.ts';
import { orientCurve, type PlanePlace, placeOnCurve } from './curve-beside.ts';
import { joinCurves } from './join-curves.ts';

const count = Number(process.env.JOINED_CURVES ?? 20);
// one frame of marks for both: how level it hangs moves neither picture against the other
const farther = { ...commonPhoto, levelRad: 0 };
const closer = { ...farther, lensM: 0.001, localM: commonPhoto.localM / 3 };

function bent(seed: number, massKg: number): Curve {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const hung = [{ fromTipM: 0, massKg }];
  return trueCurve(blank, { buttAngleRad: Math.PI / 4, clampFromTipM: blank.lengthM, turnedRad: 0, hung });
}

function known(points: readonly PlanePlace[], sigmaM: number): SeenPoint[] {
  return points.map(({ xM, yM }) => ({ xM, yM, sigmaM }));
}

/** The whole with 4 mm, the close-up with 3 mm of drift, as their marks would say. */
function pair(seed: number, whole: Curve, close: Curve): [SeenPoint[], SeenPoint[]] {
  return [
    known(photograph(whole, 2 * seed, farther), 0.004),
    known(photograph(topShare(close, 1 / 3), 2 * seed + 1, closer), 0.003),
  ];
}

/** Turn of the line through three places 10 cm apart, less what it truly is; radians, over the top 0.5 m. */
function turnErrors(points: readonly PlanePlace[], truth: Curve): number[] {
  const seen = orientCurve(points)!;
  return [0.12, 0.18, 0.24, 0.3, 0.36, 0.42].map((at) => {
    const chord = (s: number) => {
      const [a, b] = [placeOnCurve(seen, s + 0.05), placeOnCurve(seen, s - 0.05)];
      return Math.atan2(b.upM - a.upM, b.outM - a.outM);
    };
    const trueChord = (s: number) => {
      const [a, b] = [placeOn(truth, s + 0.05), placeOn(truth, s - 0.05)];
      return Math.atan2(b.yM - a.yM, b.xM - a.xM);
    };
    return chord(at - 0.05) - chord(at + 0.05) - (trueChord(at - 0.05) - trueChord(at + 0.05));
  });
}

const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);

const runs = Array.from({ length: count }, (_, i) => {
  const truth = bent(701 + i, 0.1);
  const [whole, close] = pair(9100 + i, truth, truth);
  return { truth, whole, close, joined: joinCurves(whole, close) };
});
const joined = runs.flatMap((run) =>
  run.joined.status === 'joined' ? [{ ...run, joined: run.joined }] : [],
);

test(`of ${count} pairs of pictures of one bend nineteen of twenty are joined`, () => {
  if (process.env.JOINED_CURVES) console.log(`joined ${joined.length} of ${count}`);
  expect(joined.length).toBeGreaterThanOrEqual(0.95 * count);
});

test('angles near the tip err less than half as much as in the whole picture alone', () => {
  const alone = rms(joined.flatMap(({ whole, truth }) => turnErrors(whole, truth)));
  const both = rms(joined.flatMap(({ joined: { points }, truth }) => turnErrors(points, truth)));
  const degrees = (angleRad: number) => ((180 / Math.PI) * angleRad).toFixed(2);
  if (process.env.JOINED_CURVES)
    console.log(`angle over 2 × 10 cm: whole ${degrees(alone)}°, joined ${degrees(both)}°`);
  expect(both).toBeLessThan(0.5 * alone);
});

test('no place of the joined curve is worse off than the whole’s own drift, and the seam bends nowhere', () => {
  const offs = joined.map(({ whole, joined: { points }, truth }) => {
    const off = (curve: readonly PlanePlace[]) => {
      const seen = orientCurve(curve)!;
      const true3 = [0.05, 0.2, 0.4, 0.6].map((at) => ({ at, place: placeOn(truth, at) }));
      const [hold] = curve;
      return rms(
        true3.map(({ at, place }) => {
          const { outM, upM } = placeOnCurve(seen, at);
          return Math.hypot(outM + hold.xM - place.xM, upM + hold.yM - place.yM);
        }),
      );
    };
    return { alone: off(whole), both: off(points) };
  });
  const [alone, both] = [rms(offs.map((one) => one.alone)), rms(offs.map((one) => one.both))];
  if (process.env.JOINED_CURVES)
    console.log(`place: whole ${alone.toFixed(4)} m, joined ${both.toFixed(4)} m`);
  expect(both).toBeLessThan(1.1 * alone);
});

test('the seam turns no more than the whole curve does by its own unevenness', () => {
  const kinks = (points: readonly PlanePlace[], truth: Curve) => {
    const seen = orientCurve(points)!;
    const third = truth.fromTipM[0] / 3;
    const chord = (s: number, of: (at: number) => [number, number]) => {
      const [a, b] = [of(s + 0.05), of(s - 0.05)];
      return Math.atan2(b[1] - a[1], b[0] - a[0]);
    };
    const turn = (of: (at: number) => [number, number]) =>
      chord(third - 0.075, of) - chord(third + 0.025, of);
    const [own, real] = [
      turn((at) => [placeOnCurve(seen, at).outM, placeOnCurve(seen, at).upM]),
      turn((at) => [placeOn(truth, at).xM, placeOn(truth, at).yM]),
    ];
    return own - real;
  };
  const alone = rms(joined.map(({ whole, truth }) => kinks(whole, truth)));
  const both = rms(joined.map(({ joined: { points }, truth }) => kinks(points, truth)));
  if (process.env.JOINED_CURVES)
    console.log(`seam: whole ${alone.toFixed(4)} rad, joined ${both.toFixed(4)} rad`);
  expect(both).toBeLessThan(1.1 * alone);
});

test('a close-up under another weight is refused, with both remedies', () => {
  const answers = runs.map((run, i) =>
    joinCurves(run.whole, pair(9600 + i, run.truth, bent(701 + i, 0.16))[1]),
  );
  const refusals = answers.flatMap((answer) =>
    answer.status === 'not-joined' ? [inWords(answer.finding)] : [],
  );
  if (process.env.JOINED_CURVES) console.log(`another weight: ${refusals.length} of ${count} refused`);
  expect(refusals.length).toBeGreaterThanOrEqual(0.95 * count);
  expect(refusals[0]).toMatch(/again without touching|same marks/);
});

test('a close-up of somewhere else does not overlap', () => {
  const { whole, close } = runs[0];
  const away = close.map((point) => ({ ...point, yM: point.yM + 1.5 }));
  expect(joinCurves(whole, away)).toMatchObject({
    status: 'not-joined',
    finding: { path: 'closeUp', code: 'load-test/close-up-elsewhere' },
  });
  expect(joinCurves(whole, close.slice(0, 5))).toMatchObject({ status: 'not-joined' });
});

test('a close-up tapped tip first joins just the same; a known move is found again', () => {
  const { whole } = runs[0];
  const piece = whole.slice(-60);
  const [c, s] = [Math.cos(0.01), Math.sin(0.01)];
  const [tip] = piece.slice(-1);
  const turned = piece.map(({ xM, yM, sigmaM }) => ({
    xM: tip.xM + c * (xM - tip.xM) - s * (yM - tip.yM) + 0.003,
    yM: tip.yM + s * (xM - tip.xM) + c * (yM - tip.yM) - 0.002,
    sigmaM,
  }));
  const [ahead, back] = [joinCurves(whole, turned), joinCurves(whole, turned.toReversed())];
  expect(back).toEqual(ahead);
  if (ahead.status !== 'joined') throw new Error(inWords(ahead.finding));
  // along the curve a move is hardly seen, and trades with the turn
  expect(Math.abs(ahead.move.turnRad + 0.01)).toBeLessThan(0.002);
  expect(ahead.leftoverM).toBeLessThan(0.0003);
});

import { expect, test } from 'vitest';
import { withCloseUps } from './joined-curve.ts';
import type { CurvePoint, CurveRing } from './load-curve.ts';
import type { LoadPhoto, PhotoTrace } from './read-load-photo.ts';

/** A quarter of a circle of 1.5 m, from its level hold down to the tip. */
function arc(from: number, to: number, count: number, upM = 0): CurvePoint[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (Math.PI / 2) * (from + ((to - from) * i) / (count - 1));
    return {
      xM: 1.5 * Math.sin(angle),
      yM: 1.5 * Math.cos(angle) + upM,
      sigmaM: 0.003,
      px: [i, 7] as [number, number],
    };
  });
}
function ring(point: CurvePoint, guide: string | undefined): CurveRing {
  return { ...point, guide };
}
function trace(points: CurvePoint[], rings: CurveRing[] = [], outOfDate = false): PhotoTrace {
  const made = { madeAt: '', engineVersion: '', cameraAwayM: undefined, seenShare: 1, lensEstimated: false };
  return { ...made, outOfDate, points, rings, marksRmsM: 0.001, findings: [] };
}
function photo(id: string, part: LoadPhoto['part'], of: PhotoTrace): LoadPhoto {
  return { id, part, trace: of, name: id } as LoadPhoto;
}
const wholePoints = arc(0, 1, 200);
const whole = trace(wholePoints, [
  ring(wholePoints[100], 'g5'),
  ring(wholePoints[190], 'g1'),
  ring(wholePoints[199], undefined),
]);

test('a close-up takes its place in the curve, and its rings go before those of the whole', () => {
  const near = arc(2 / 3, 1, 200, 0.004);
  const close = photo('c', 'close-up', trace(near, [ring(near[170], 'g1'), ring(near[199], undefined)]));
  const { trace: joined, closeUps } = withCloseUps(whole, [photo('w', 'whole', whole), close]);
  expect(closeUps).toMatchObject([{ photo: { id: 'c' }, why: undefined }]);
  // 4 mm upwards where the curve falls at 60° to 90°: square to it 4 mm · √(½ − √3/2 / (4 · π/6)) = 1.18 mm
  expect(closeUps[0].joined!.apartM).toBeCloseTo(0.00118, 4);
  expect(closeUps[0].joined!.leftoverM).toBeLessThan(0.001);
  // from the hold as it was, finer at the tip, and still on the circle
  expect(joined.points.slice(0, 100)).toEqual(wholePoints.slice(0, 100));
  expect(joined.points.length).toBeGreaterThan(300);
  for (const { xM, yM } of joined.points) expect(Math.abs(Math.hypot(xM, yM) - 1.5)).toBeLessThan(0.001);
  expect(joined.rings.map(({ guide }) => guide)).toEqual(['g1', undefined, 'g5', undefined]);
  expect(Math.abs(Math.hypot(joined.rings[0].xM, joined.rings[0].yM) - 1.5)).toBeLessThan(0.001);
});

test('one that does not fit, or is out of date, leaves the whole as it was and says why', () => {
  const elsewhere = photo('c', 'close-up', trace(arc(2 / 3, 1, 200, 0.05)));
  const stale = photo('d', 'close-up', trace(arc(2 / 3, 1, 200), [], true));
  const { trace: same, closeUps } = withCloseUps(whole, [elsewhere, stale]);
  expect(same).toBe(whole);
  expect(closeUps.map(({ why }) => why?.code)).toEqual([
    'load-test/close-up-beside',
    'load-test/close-up-out-of-date',
  ]);
});

import { describe, expect, test } from 'vitest';
import { cameraChoice, cameraFor } from '../../../test/render/camera.ts';
import { randomFrom } from '../../../test/render/random.ts';
import { oneCamera } from './one-camera.ts';
import type { FitCurvePoint } from './request.ts';
import { throughOneCamera } from './still-camera.ts';

const frame = { left: -0.1, right: 2.5, bottom: -1.2, top: 0.3 };

/** Blanks drooping more and more, as a renderer's camera sees them; picture `i` has its places wrong by `off(i)`. */
function stand(
  seed: number,
  off: (picture: number) => number,
  seenOff: (picture: number) => number = () => 0,
) {
  const camera = cameraFor(cameraChoice(randomFrom(seed), 4000, 3000, frame));
  return [0.02, 0.12, 0.22].map((droop, i) =>
    Array.from({ length: 101 }, (_, k): FitCurvePoint => {
      const [x, y] = [0.023 * k, -droop * (0.023 * k) ** 2];
      const at = camera.project({ x, y });
      return {
        xM: x + off(i) * x,
        yM: y - off(i) * x,
        px: [at.x + 0.3 * seenOff(i), at.y + seenOff(i)],
      };
    }),
  );
}
const heldAs = 'one clamp';
const asPictures = (curves: FitCurvePoint[][]) =>
  curves.map((points) => ({ setup: { kind: 'curve' as const, tests: [{ points }] as const }, heldAs }));
const sizes = (points: readonly FitCurvePoint[], others: readonly FitCurvePoint[]) =>
  Math.max(...points.map(({ xM, yM }, k) => Math.hypot(xM - others[k].xM, yM - others[k].yM)));

describe('one camera for the pictures of a stand', () => {
  test('gives back the places where all pictures agree, through a lens seen at an angle', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const curves = stand(seed, () => 0);
      const { pictures, missPx } = oneCamera(curves) ?? { pictures: [], missPx: [9] };
      expect(Math.max(...missPx)).toBeLessThan(0.1);
      for (const [i, points] of curves.entries()) expect(sizes(points, pictures[i])).toBeLessThan(0.0002);
    }
  });
  test('leaves pictures that disagree by a millimetre with one error for all', () => {
    const amounts = [0.0008, -0.0004, 0];
    const curves = stand(1, (i) => amounts[i]);
    const { pictures = [] } = oneCamera(curves) ?? {};
    // one pixel, one place: the curves cross at the hold, whatever their own cameras said there
    const truth = stand(1, () => 0);
    const error = (i: number, k: number) => pictures[i][k].yM - truth[i][k].yM;
    expect(Math.abs(error(0, 20) - error(2, 20))).toBeLessThan(0.0003);
    expect(Math.abs(curves[0][20].yM - truth[0][20].yM - curves[2][20].yM + truth[2][20].yM)).toBeGreaterThan(
      0.00035,
    );
  });
  test('is not forced on a camera that moved, nor where pixels are not told', () => {
    expect(throughOneCamera(asPictures(stand(1, () => 0)))).toBeDefined();
    expect(
      throughOneCamera(
        asPictures(
          stand(
            1,
            () => 0,
            (i) => (i === 2 ? 9 : 0),
          ),
        ),
      ),
    ).toBeUndefined();
    const blind = stand(1, () => 0).map((points) => points.map(({ xM, yM }) => ({ xM, yM })));
    expect(throughOneCamera(asPictures(blind))).toBeUndefined();
    expect(throughOneCamera(asPictures(stand(1, () => 0)).slice(0, 1))).toBeUndefined();
  });
});

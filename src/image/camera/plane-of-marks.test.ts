import { describe, expect, test } from 'vitest';
import { randomFrom } from '../../../test/render/random.ts';
import { planeOfMarks } from './plane-of-marks.ts';

const picture = { widthPx: 4000, heightPx: 3000 };

/** A pinhole camera of our own three rotations, for points in space: the outside reference here. */
function pinhole(seed: number) {
  const random = randomFrom(seed);
  const [yaw, pitch, roll] = [
    random.between(-0.3, 0.3),
    random.between(-0.2, 0.2),
    random.between(-0.1, 0.1),
  ];
  const distance = random.between(2.6, 3.4);
  const focal = 3080;
  const see = (x: number, y: number, towardsM: number): [number, number] => {
    const [X, Y, Z] = [x - 1.2, -(y - 0.7), -towardsM];
    const x1 = Math.cos(yaw) * X - Math.sin(yaw) * Z;
    const z1 = Math.sin(yaw) * X + Math.cos(yaw) * Z;
    const y2 = Math.cos(pitch) * Y - Math.sin(pitch) * z1;
    const z2 = Math.sin(pitch) * Y + Math.cos(pitch) * z1 + distance;
    const u = (Math.cos(roll) * x1 - Math.sin(roll) * y2) / z2;
    const v = (Math.sin(roll) * x1 + Math.cos(roll) * y2) / z2;
    return [1999.5 + focal * u, 1499.5 + focal * v];
  };
  return { see, distance };
}

describe('marks on a wall behind the rod', () => {
  test('with the stand-off given, places in the rod’s own plane are right; without it they are not', () => {
    for (const seed of [1, 2, 3, 4]) {
      const { see, distance } = pinhole(seed);
      const marks = [
        [0, 0],
        [2.4, 0],
        [2.4, 1.4],
        [0, 1.4],
        [1.2, 1.4],
        [1.2, 0],
      ].map(([x, y]) => ({ px: see(x, y, 0), atM: [x, y] as [number, number] }));
      const plain = planeOfMarks({ marks }, picture);
      const moved = planeOfMarks({ marks, marksBehindM: 0.12 }, picture);
      if (plain.status !== 'converged' || moved.status !== 'converged') throw new Error('refused');
      let worstPlain = 0;
      for (const [x, y] of [
        [0.1, 0.1],
        [2.2, 1.1],
        [1, 0.5],
        [0.2, 1.2],
      ]) {
        const px = see(x, y, 0.12);
        const miss = (place: { x: number; y: number }) => Math.hypot(place.x - x, place.y - y);
        const at = { x: px[0], y: px[1] };
        worstPlain = Math.max(worstPlain, miss(plain.toPlane(at)));
        // The focal length is known only as far as perspective shows it.
        expect(miss(moved.toPlane(at)), `seed ${seed}`).toBeLessThan(0.01);
        const back = moved.toPixel({ x, y });
        expect(Math.hypot(back.x - at.x, back.y - at.y)).toBeLessThan(12);
      }
      expect(worstPlain).toBeGreaterThan(0.03);
      expect(moved.cameraM).toBeCloseTo(plain.cameraM - 0.12, 9);
      expect(Math.abs(plain.cameraM / distance - 1)).toBeLessThan(0.15);
    }
  });
});

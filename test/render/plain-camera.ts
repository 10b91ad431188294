import type { Place } from './canvas.ts';
import type { Random } from './random.ts';

/**
 * A camera that casts rays: pixel → lens by the division model u = d/(1 + λ|d|²) (A. W. Fitzgibbon, CVPR 2001, from
 * memory), principal point off the middle, a turn about an arbitrary axis (Rodrigues) → the wall Z = 0. `project` is the
 * same in closed form the other way.
 */
export interface PlainCamera {
  cast(x: number, y: number): Place;
  project(place: Place): Place;
}

interface Wanted {
  widthPx: number;
  heightPx: number;
  left: number;
  right: number;
  bottom: number;
  top: number;
}

export function plainCamera(random: Random, wanted: Wanted): PlainCamera {
  const { widthPx, heightPx, left, right, bottom, top } = wanted;
  const focalPx = widthPx * random.between(0.68, 0.95);
  const lens = random.between(-0.05, 0.05);
  const centre = {
    x: widthPx / 2 + 0.004 * widthPx * random.normal(),
    y: heightPx / 2 + 0.004 * widthPx * random.normal(),
  };
  const turn = rotation(random.between(0, 6.28), random.between(0.02, 0.22), random.between(-0.04, 0.04));
  const aim = { x: 0.5 * (left + right), y: 0.5 * (bottom + top) };
  const corners = [left, right].flatMap((x) => [bottom, top].map((y) => ({ x, y })));
  for (let awayM = 0.5; ; awayM *= 1.02) {
    const camera = cameraAt({ focalPx, lens, centre, turn, aim, awayM });
    const inside = corners.every((corner) => {
      const at = camera.project(corner);
      return (
        at.x > 0.01 * widthPx && at.x < 0.99 * widthPx && at.y > 0.01 * heightPx && at.y < 0.99 * heightPx
      );
    });
    if (inside) return camera;
  }
}

interface Set {
  focalPx: number;
  lens: number;
  centre: Place;
  /** Rows of the rotation from the wall's frame (x right, y up, z to the camera) to the camera's (x right, y down, z ahead). */
  turn: number[][];
  aim: Place;
  awayM: number;
}

function cameraAt({ focalPx, lens, centre, turn: r, aim, awayM }: Set): PlainCamera {
  return {
    project({ x, y }) {
      const [X, Y] = [x - aim.x, y - aim.y];
      const depth = r[2][0] * X + r[2][1] * Y + awayM;
      const u = (r[0][0] * X + r[0][1] * Y) / depth;
      const v = (r[1][0] * X + r[1][1] * Y) / depth;
      // d = 2u / (1 + √(1 − 4λ|u|²)), the smaller root of λ|u|·d² − d + |u| = 0.
      const stretch = 2 / (1 + Math.sqrt(1 - 4 * lens * (u * u + v * v)));
      return { x: centre.x + focalPx * stretch * u, y: centre.y + focalPx * stretch * v };
    },
    cast(px, py) {
      const [dx, dy] = [(px - centre.x) / focalPx, (py - centre.y) / focalPx];
      const divide = 1 + lens * (dx * dx + dy * dy);
      const [u, v] = [dx / divide, dy / divide];
      // (r0 − u·r2)·(X, Y) = u·away, likewise for v.
      const [a, b] = [r[0][0] - u * r[2][0], r[0][1] - u * r[2][1]];
      const [c, d] = [r[1][0] - v * r[2][0], r[1][1] - v * r[2][1]];
      const determinant = a * d - b * c;
      const [p, q] = [u * awayM, v * awayM];
      return { x: aim.x + (p * d - b * q) / determinant, y: aim.y + (a * q - p * c) / determinant };
    },
  };
}

/** Tilt by `angle` about the wall's axis at `direction`, then roll; y turned down. Rodrigues' formula. */
function rotation(direction: number, angle: number, roll: number): number[][] {
  const [kx, ky] = [Math.cos(direction), Math.sin(direction)];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const tilted = [
    [c + kx * kx * (1 - c), kx * ky * (1 - c), ky * s],
    [kx * ky * (1 - c), c + ky * ky * (1 - c), -kx * s],
    [-ky * s, kx * s, c],
  ];
  const [cr, sr] = [Math.cos(roll), Math.sin(roll)];
  const [right, up, near] = tilted;
  const mix = (i: number) => [cr * right[i] - sr * up[i], -(sr * right[i] + cr * up[i]), -near[i]];
  return [0, 1, 2].map((row) => [0, 1, 2].map((column) => mix(column)[row]));
}

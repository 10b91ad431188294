/**
 * One camera for all pictures of a stand. Each picture's places were reckoned from its pixels by a camera of its own,
 * found through its own taps on the marks; but the camera never moved. One camera takes the place of all, so that what the
 * taps got wrong is smaller, and the same in every picture: there the stand's field can tell it.
 *
 *   place = H(c + (pixel − c)(1 + a r² + b r⁴)), r = |pixel − c|     H projective, c and a, b of the lens
 *
 * Picture i follows q + dᵢ exactly along its curve; q is free, dᵢ is what taps on marks about the pictures' frame leave.
 * Damped least squares over q and all dᵢ, pixels and places counted from their middles in units of their extent. The lens
 * is written backwards, which follows k1 = ±0.04 to a hundredth of a pixel.
 * Source: projective map and radial distortion, R. Hartley and A. Zisserman, Multiple View Geometry (2nd ed. 2004), 2.3
 * and 7.4; damped least squares, K. Levenberg 1944 and D. Marquardt 1963 (from memory).
 */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import type { FitCurvePoint } from './request.ts';

export interface OneCamera {
  /** The pictures' points, at the places that the one camera gives. */
  pictures: FitCurvePoint[][];
  /** How far each picture's own places lie from those, root mean square, pixels. */
  missPx: number[];
}

const unknowns = 12;
/** Beliefs in the lens's middle and bending, in units of the extent; they keep a poorly told lens at rest. Judgement. */
const lensSpread = [1, 1, 0.01, 0.001] as const;
const ownLensSpread = [0.3, 0.3, 0.005, 0.0005] as const;
/** Of a place along the traced curve against its own camera, from afar to how truly the lens is written; of a tap. */
const placesPx = [3, 0.3, 0.03];
const tapPx = 1;
const sampled = 20;

interface Seen {
  u: number;
  v: number;
  x: number;
  y: number;
}
interface Frame {
  middle: Seen;
  px: number;
  m: number;
}

/** Undefined where a point does not say where it was seen, or the places tell no camera. */
export function oneCamera(pictures: readonly (readonly FitCurvePoint[])[]): OneCamera | undefined {
  const frame = frameOf(pictures.flat());
  if (!frame) return undefined;
  const seen = pictures.map((points) => points.map((point) => inFrame(frame, point)));
  const asked = { seen: seen.map(thinned), marks: marksAbout(seen.flat()), px: frame.px };
  let camera = new Float64Array(unknowns * (pictures.length + 1));
  camera.set(startOf(asked.seen.flat()));
  for (const placePx of placesPx) camera = fittedFrom(camera, { ...asked, placePx });
  if (!camera.every(Number.isFinite)) return undefined;
  const placed = seen.map((points) => points.map(({ u, v }) => placeOf(camera, u, v)));
  return {
    pictures: pictures.map((points, i) =>
      points.map((point, k) => ({
        ...point,
        xM: frame.middle.x + frame.m * placed[i][k].x,
        yM: frame.middle.y + frame.m * placed[i][k].y,
      })),
    ),
    missPx: seen.map((points, i) => frame.px * rootMeanSquare(points, placed[i])),
  };
}

function frameOf(points: readonly FitCurvePoint[]): Frame | undefined {
  if (points.some(({ px }) => !px)) return undefined;
  const all = points.map((point) => inFrame({ middle: { u: 0, v: 0, x: 0, y: 0 }, px: 1, m: 1 }, point));
  const mean = (of: (one: Seen) => number) => all.reduce((sum, one) => sum + of(one), 0) / all.length;
  const middle = {
    u: mean(({ u }) => u),
    v: mean(({ v }) => v),
    x: mean(({ x }) => x),
    y: mean(({ y }) => y),
  };
  const px = Math.sqrt(mean(({ u, v }) => (u - middle.u) ** 2 + (v - middle.v) ** 2));
  const m = Math.sqrt(mean(({ x, y }) => (x - middle.x) ** 2 + (y - middle.y) ** 2));
  return px > 0 && m > 0 ? { middle, px, m } : undefined;
}

function inFrame({ middle, px, m }: Frame, { px: at = [0, 0], xM, yM }: FitCurvePoint): Seen {
  return {
    u: (at[0] - middle.u) / px,
    v: (at[1] - middle.v) / px,
    x: (xM - middle.x) / m,
    y: (yM - middle.y) / m,
  };
}

function thinned(points: readonly Seen[]): Seen[] {
  const count = Math.min(sampled, points.length);
  return Array.from({ length: count }, (_, i) => points[Math.round((i * (points.length - 1)) / (count - 1))]);
}

function placeOf(q: ArrayLike<number>, u: number, v: number): { x: number; y: number } {
  const [du, dv] = [u - q[8], v - q[9]];
  const r2 = du * du + dv * dv;
  const stretch = 1 + r2 * (q[10] + r2 * q[11]);
  const [a, b] = [q[8] + du * stretch, q[9] + dv * stretch];
  const depth = 1 + q[6] * a + q[7] * b;
  return { x: (q[0] * a + q[1] * b + q[2]) / depth, y: (q[3] * a + q[4] * b + q[5]) / depth };
}

/** Where taps are taken to have been: round the frame that the pictures fill. */
function marksAbout(seen: readonly Seen[]): { u: number; v: number }[] {
  const edges = (values: readonly number[]) => {
    const [low, high] = [Math.min(...values), Math.max(...values)];
    return [low - 0.1 * (high - low), high + 0.1 * (high - low)];
  };
  const [left, right] = edges(seen.map(({ u }) => u));
  const [top, bottom] = edges(seen.map(({ v }) => v));
  return [left, 0.5 * (left + right), right].flatMap((u) => [top, bottom].map((v) => ({ u, v })));
}

interface Problem {
  placePx: number;
  seen: readonly (readonly Seen[])[];
  marks: readonly { u: number; v: number }[];
  px: number;
}

/** `state` holds q, then each picture's d. */
function missesOf(state: Float64Array, { seen, marks, px, placePx }: Problem): Float64Array {
  const q = state.subarray(0, unknowns);
  const out: number[] = [];
  lensSpread.forEach((spread, k) => {
    out.push(q[8 + k] / spread);
  });
  seen.forEach((points, i) => {
    const own = state.slice(unknowns * (i + 1), unknowns * (i + 2));
    ownLensSpread.forEach((spread, k) => {
      out.push(own[8 + k] / spread);
    });
    for (let k = 0; k < unknowns; k++) own[k] += q[k];
    for (const { u, v, x, y } of points) {
      const place = placeOf(own, u, v);
      out.push((px / placePx) * (place.x - x), (px / placePx) * (place.y - y));
    }
    for (const { u, v } of marks) {
      const [here, common] = [placeOf(own, u, v), placeOf(q, u, v)];
      out.push((px / tapPx) * (here.x - common.x), (px / tapPx) * (here.y - common.y));
    }
  });
  return Float64Array.from(out);
}

function fittedFrom(start: Float64Array<ArrayBuffer>, problem: Problem): Float64Array<ArrayBuffer> {
  let state = start;
  let misses = missesOf(state, problem);
  let cost = squareOf(misses);
  let damping = 1e-3;
  for (let round = 0; round < 25; round++) {
    const slopes = slopesOf(state, problem);
    let settled = true;
    while (damping < 1e9) {
      const step = stepOf(slopes, misses, damping);
      const tried = step && state.map((value, k) => value - step[k]);
      const after = tried && missesOf(tried, problem);
      if (tried && after && squareOf(after) <= cost) {
        settled = cost - squareOf(after) < 1e-6 * (1 + cost);
        [state, misses, cost] = [tried, after, squareOf(after)];
        damping = Math.max(1e-9, damping / 10);
        break;
      }
      damping *= 8;
    }
    if (settled) break;
  }
  return state;
}

/** From the similarity that all places tell, turned, mirrored or not: the better of the two least-squares similarities. */
function startOf(seen: readonly Seen[]): Float64Array {
  const similar = [1, -1].map((hand) => {
    const [c, s, size] = seen.reduce(
      ([c, s, size], { u, v, x, y }) => [
        c + u * x + hand * v * y,
        s + u * y - hand * v * x,
        size + u * u + v * v,
      ],
      [0, 0, 0],
    );
    const [a, b] = [c / size, s / size];
    return Float64Array.from([a, -hand * b, 0, b, hand * a, 0, 0, 0, 0, 0, 0, 0]);
  });
  const [turned, mirrored] = similar.map((q) => missOf(q, seen));
  return similar[turned < mirrored ? 0 : 1];
}

function missOf(q: Float64Array, seen: readonly Seen[]): number {
  return seen.reduce((sum, { u, v, x, y }) => {
    const place = placeOf(q, u, v);
    return sum + (place.x - x) ** 2 + (place.y - y) ** 2;
  }, 0);
}

function slopesOf(state: Float64Array, problem: Problem): Float64Array[] {
  const step = 1e-6;
  return Array.from(state, (_, k) => {
    const moved = (by: number) =>
      missesOf(
        state.map((value, i) => (i === k ? value + by : value)),
        problem,
      );
    const [ahead, behind] = [moved(step), moved(-step)];
    return ahead.map((value, i) => (value - behind[i]) / (2 * step));
  });
}

function stepOf(slopes: readonly Float64Array[], misses: Float64Array, damping: number) {
  const n = slopes.length;
  const normal = new Float64Array(n * n);
  const right = Float64Array.from(slopes, (slope) => dot(slope, misses));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) normal[i * n + j] = dot(slopes[i], slopes[j]);
    normal[i * n + i] = normal[i * n + i] * (1 + damping) + 1e-9;
  }
  if (!factorCholesky(normal, n)) return undefined;
  solveLower(normal, n, right, right);
  solveUpper(normal, n, right, right);
  return right;
}

function squareOf(values: Float64Array): number {
  return dot(values, values);
}

function rootMeanSquare(seen: readonly Seen[], placed: readonly { x: number; y: number }[]): number {
  const square = seen.reduce((sum, { x, y }, i) => sum + (placed[i].x - x) ** 2 + (placed[i].y - y) ** 2, 0);
  return Math.sqrt(square / seen.length);
}

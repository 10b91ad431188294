/** The camera's unknowns, where they start, and how far the marks then lie from where they are seen. */
import { Matrix } from 'ml-matrix';
import { type Camera, cameraProject } from './camera-model.ts';
import { homographyFit, type Point } from './homography.ts';

export interface Mark {
  pixel: Point;
  plane: Point;
}

/** What is usual of a telephone's picture, before any mark is seen. */
export interface CameraUsual {
  /** Focal length over the picture's longer side, and the spread of its logarithm. */
  focalShare: number;
  focalLogSpread: number;
  /** Spread of the principal point about the middle, over the picture's longer side. */
  centreSpread: number;
  k1Spread: number;
  k2Spread: number;
  /** Standard error of a mark's pixel place. */
  markSigmaPx: number;
}

export const cameraUsual: CameraUsual = {
  focalShare: 0.77,
  focalLogSpread: 0.25,
  centreSpread: 0.004,
  k1Spread: 0.04,
  k2Spread: 0.015,
  markSigmaPx: 1,
};

export interface CameraFitInput {
  marks: readonly Mark[];
  widthPx: number;
  heightPx: number;
  usual?: Partial<CameraUsual>;
}

export const parameterCount = 11;

export interface Problem {
  input: CameraFitInput;
  usual: CameraUsual;
  sidePx: number;
  /** Scale and middle of the marks, so that the parameters are of order one. */
  middle: Point;
  sizeM: number;
  /** −1 where the plane is seen from behind, so that the turn stays a proper rotation. */
  hand: number;
  start: number[];
  residuals(state: readonly number[]): number[];
}

/** State: turn vector (3) on top of the start, place (3), ln focal, centre (2), k1, k2. */
export function problemOf(input: CameraFitInput): Problem {
  const usual = { ...cameraUsual, ...input.usual };
  const sidePx = Math.max(input.widthPx, input.heightPx);
  const planes = input.marks.map((mark) => mark.plane);
  const middle = {
    x: planes.reduce((sum, at) => sum + at.x, 0) / planes.length,
    y: planes.reduce((sum, at) => sum + at.y, 0) / planes.length,
  };
  const sizeM = Math.sqrt(
    planes.reduce((sum, at) => sum + (at.x - middle.x) ** 2 + (at.y - middle.y) ** 2, 0) / planes.length,
  );
  const problem: Problem = { input, usual, sidePx, middle, sizeM, hand: 1, start: [], residuals: () => [] };
  problem.residuals = (state) => residualsOf(problem, state);
  return problem;
}

function residualsOf(problem: Problem, state: readonly number[]): number[] {
  const { usual, input } = problem;
  const camera = cameraOf(problem, state);
  const out: number[] = [];
  for (const mark of input.marks) {
    const at = cameraProject(camera, mark.plane);
    // A mark behind the camera is no solution; a large finite misfit keeps the solver away from there.
    const seen = Number.isFinite(at.x + at.y) && depthOf(camera, mark.plane) > 0;
    out.push(seen ? (at.x - mark.pixel.x) / usual.markSigmaPx : 1e6);
    out.push(seen ? (at.y - mark.pixel.y) / usual.markSigmaPx : 1e6);
  }
  out.push((state[6] - Math.log(usual.focalShare)) / usual.focalLogSpread);
  out.push(state[7] / usual.centreSpread, state[8] / usual.centreSpread);
  out.push(state[9] / usual.k1Spread, state[10] / usual.k2Spread);
  return out;
}

function depthOf(camera: Camera, at: Point): number {
  return camera.plane[6] * at.x + camera.plane[7] * at.y + camera.plane[8];
}

export function cameraOf(problem: Problem, state: readonly number[]): Camera {
  const turn = rotation(state[0], state[1], state[2]);
  const { middle, sizeM, hand, sidePx, input } = problem;
  const plane = new Float64Array(9);
  for (let row = 0; row < 3; row++) {
    const a = turn[3 * row] / sizeM;
    const b = (hand * turn[3 * row + 1]) / sizeM;
    plane[3 * row] = a;
    plane[3 * row + 1] = b;
    plane[3 * row + 2] = state[3 + row] - a * middle.x - b * middle.y;
  }
  return {
    focalPx: Math.exp(state[6]) * sidePx,
    centrePx: {
      x: (input.widthPx - 1) / 2 + state[7] * sidePx,
      y: (input.heightPx - 1) / 2 + state[8] * sidePx,
    },
    k1: state[9],
    k2: state[10],
    plane,
  };
}

/** Rodrigues' formula, row-major. */
function rotation(x: number, y: number, z: number): Float64Array {
  const angle = Math.hypot(x, y, z);
  const s = angle < 1e-8 ? 1 - (angle * angle) / 6 : Math.sin(angle) / angle;
  const c = angle < 1e-8 ? 0.5 - (angle * angle) / 24 : (1 - Math.cos(angle)) / (angle * angle);
  return Float64Array.from([
    1 - c * (y * y + z * z),
    c * x * y - s * z,
    c * x * z + s * y,
    c * x * y + s * z,
    1 - c * (x * x + z * z),
    c * y * z - s * x,
    c * x * z - s * y,
    c * y * z + s * x,
    1 - c * (x * x + y * y),
  ]);
}

/**
 * Start: the homography's columns for the usual focal length, made orthogonal. For nearly square-on pictures
 * this is already within a few pixels.
 */
export function startOf(problem: Problem): number[] {
  const { input, usual, sidePx, middle, sizeM } = problem;
  const focal = usual.focalShare * sidePx;
  const pairs = input.marks.map((mark) => ({
    plane: { x: (mark.plane.x - middle.x) / sizeM, y: (mark.plane.y - middle.y) / sizeM },
    picture: {
      x: (mark.pixel.x - (input.widthPx - 1) / 2) / focal,
      y: (mark.pixel.y - (input.heightPx - 1) / 2) / focal,
    },
  }));
  const h = homographyFit(pairs).homography;
  const sign = h[8] < 0 ? -1 : 1;
  const size = Math.sqrt(Math.hypot(h[0], h[3], h[6]) * Math.hypot(h[1], h[4], h[7])) * sign;
  const first = [h[0] / size, h[3] / size, h[6] / size];
  const second = [h[1] / size, h[4] / size, h[7] / size];
  // Seen from behind, the second axis is mirrored.
  problem.hand = first[0] * second[1] - first[1] * second[0] < 0 ? -1 : 1;
  const turn = turnVector(
    first,
    second.map((value) => value * problem.hand),
  );
  return [...turn, h[2] / size, h[5] / size, h[8] / size, Math.log(usual.focalShare), 0, 0, 0, 0];
}

/** Turn vector of the rotation nearest to two given columns (Gram-Schmidt on their bisectors). */
function turnVector(first: readonly number[], second: readonly number[]): number[] {
  const unit = (v: number[]): number[] => v.map((value) => value / Math.hypot(...v));
  const a = unit([...first]);
  const b = unit([...second]);
  const sum = unit(a.map((value, i) => value + b[i]));
  const difference = unit(a.map((value, i) => value - b[i]));
  const x = sum.map((value, i) => (value + difference[i]) * Math.SQRT1_2);
  const y = sum.map((value, i) => (value - difference[i]) * Math.SQRT1_2);
  const z = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
  const axis = [y[2] - z[1], z[0] - x[2], x[1] - y[0]];
  const sine = Math.hypot(...axis) / 2;
  const angle = Math.atan2(sine, (x[0] + y[1] + z[2] - 1) / 2);
  if (sine < 1e-9) {
    // No turn, or half a turn: then the rotation's symmetric part holds the axis.
    if (angle < 1) return [0, 0, 0];
    const spread = [x[0], y[1], z[2]].map((value) => Math.sqrt(Math.max(0, (value + 1) / 2)) * Math.PI);
    return [spread[0], Math.sign(x[1] || 1) * spread[1], Math.sign(x[2] || 1) * spread[2]];
  }
  return axis.map((value) => (value / (2 * sine)) * angle);
}

export function jacobianOf(problem: Problem, state: readonly number[], residuals: readonly number[]): Matrix {
  const jacobian = Matrix.zeros(residuals.length, parameterCount);
  for (let column = 0; column < parameterCount; column++) {
    const step = 1e-6 * Math.max(1, Math.abs(state[column]));
    const ahead = problem.residuals(state.map((value, i) => (i === column ? value + step : value)));
    const behind = problem.residuals(state.map((value, i) => (i === column ? value - step : value)));
    for (let row = 0; row < residuals.length; row++) {
      jacobian.set(row, column, (ahead[row] - behind[row]) / (2 * step));
    }
  }
  return jacobian;
}

export function halfSquares(residuals: readonly number[]): number {
  return residuals.reduce((sum, value) => sum + value * value, 0) / 2;
}

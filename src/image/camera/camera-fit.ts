/**
 * The camera from marks of known place in the blank's plane, as the most probable one.
 *
 * Minimises  Σ |seen − projected|²/σ² + Σ (parameter − usual)²/spread²  over the turn and place of the
 * camera, focal length, principal point and radial distortion. Four marks leave one equation spare, which
 * the usual values of a telephone's camera use; six and more marks outweigh them and fix the lens.
 * Assumptions: Gaussian errors, equal for all marks; camera as in camera-model.ts.
 * Source: start from the homography's columns, Z. Zhang, "A flexible new technique for camera calibration",
 * IEEE Trans. PAMI 22 (2000) 1330-1334; damped least squares, K. Levenberg 1944 and D. Marquardt 1963.
 */
import { inverse, Matrix, solve } from 'ml-matrix';
import { type Camera, cameraBackProject, cameraProject } from './camera-model.ts';
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

export interface CameraFit {
  status: 'converged' | 'stopped';
  camera: Camera;
  /** Misfit of each mark in pixels, seen minus projected, in the order given. */
  misfitPx: Point[];
  /** Root mean square misfit over the marks, in the plane. */
  marksRmsM: number;
  /** Half the weighted sum of squares, priors included. */
  cost: number;
  iterations: number;
  /** Standard error of the plane place seen at a pixel, from the marks' errors: root of the summed variances. */
  sigmaAtM(pixel: Point): number;
}

export interface CameraFitInput {
  marks: readonly Mark[];
  widthPx: number;
  heightPx: number;
  usual?: Partial<CameraUsual>;
}

const parameterCount = 11;

/** Fits the camera; throws when fewer than four marks are given (an invariant of the caller). */
export function cameraFit(input: CameraFitInput): CameraFit {
  const problem = problemOf(input);
  let state = startOf(problem);
  let residuals = problem.residuals(state);
  let cost = halfSquares(residuals);
  let damping = 1e-3;
  let iterations = 0;
  let settled = false;
  while (iterations < 200 && !settled) {
    iterations++;
    const jacobian = jacobianOf(problem, state, residuals);
    const normal = jacobian.transpose().mmul(jacobian);
    const gradient = jacobian.transpose().mmul(Matrix.columnVector(residuals));
    for (;;) {
      const damped = normal.clone();
      for (let i = 0; i < parameterCount; i++) damped.set(i, i, damped.get(i, i) * (1 + damping) + 1e-12);
      const step = solve(damped, gradient).to1DArray();
      const trial = state.map((value, i) => value - step[i]);
      const trialResiduals = problem.residuals(trial);
      const trialCost = halfSquares(trialResiduals);
      if (trialCost <= cost) {
        settled = cost - trialCost < 1e-10 * (1 + cost);
        state = trial;
        residuals = trialResiduals;
        cost = trialCost;
        damping = Math.max(damping / 10, 1e-9);
        break;
      }
      damping *= 8;
      if (damping > 1e12) {
        settled = true;
        break;
      }
    }
  }
  return answerOf(problem, state, { cost, iterations, settled });
}

interface Problem {
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
function problemOf(input: CameraFitInput): Problem {
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

function cameraOf(problem: Problem, state: readonly number[]): Camera {
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
function startOf(problem: Problem): number[] {
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

function jacobianOf(problem: Problem, state: readonly number[], residuals: readonly number[]): Matrix {
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

function halfSquares(residuals: readonly number[]): number {
  return residuals.reduce((sum, value) => sum + value * value, 0) / 2;
}

function answerOf(
  problem: Problem,
  state: readonly number[],
  run: { cost: number; iterations: number; settled: boolean },
): CameraFit {
  const camera = cameraOf(problem, state);
  const { marks } = problem.input;
  const residuals = problem.residuals(state);
  const misfitPx = marks.map((mark) => {
    const at = cameraProject(camera, mark.plane);
    return { x: mark.pixel.x - at.x, y: mark.pixel.y - at.y };
  });
  const squaresM = marks.map((mark) => {
    const at = cameraBackProject(camera, mark.pixel);
    return (at.x - mark.plane.x) ** 2 + (at.y - mark.plane.y) ** 2;
  });
  const jacobian = jacobianOf(problem, state, residuals);
  // Marks that fit worse than assumed widen every error by as much.
  const spare = Math.max(1, 2 * marks.length - 8);
  const squares = misfitPx.reduce((sum, off) => sum + off.x * off.x + off.y * off.y, 0);
  const excess = Math.max(1, squares / problem.usual.markSigmaPx ** 2 / spare);
  const covariance = inverse(jacobian.transpose().mmul(jacobian)).mul(excess);
  return {
    status: run.settled ? 'converged' : 'stopped',
    camera,
    misfitPx,
    marksRmsM: Math.sqrt(squaresM.reduce((sum, value) => sum + value, 0) / marks.length),
    cost: run.cost,
    iterations: run.iterations,
    sigmaAtM: (pixel) => sigmaAt(problem, state, covariance, pixel),
  };
}

function sigmaAt(problem: Problem, state: readonly number[], covariance: Matrix, pixel: Point): number {
  const slopes = Matrix.zeros(2, parameterCount);
  for (let column = 0; column < parameterCount; column++) {
    const step = 1e-6 * Math.max(1, Math.abs(state[column]));
    const shifted = (sign: number): Point =>
      cameraBackProject(
        cameraOf(
          problem,
          state.map((value, i) => (i === column ? value + sign * step : value)),
        ),
        pixel,
      );
    const ahead = shifted(1);
    const behind = shifted(-1);
    slopes.set(0, column, (ahead.x - behind.x) / (2 * step));
    slopes.set(1, column, (ahead.y - behind.y) / (2 * step));
  }
  const spread = slopes.mmul(covariance).mmul(slopes.transpose());
  return Math.sqrt(Math.max(0, spread.get(0, 0) + spread.get(1, 1)));
}

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
import {
  type CameraFitInput,
  cameraOf,
  halfSquares,
  jacobianOf,
  type Problem,
  parameterCount,
  problemOf,
  startOf,
} from './camera-problem.ts';
import type { Point } from './homography.ts';

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
  /** How many of the unknowns the marks tell, not what is usual: the rest of their equations is spare. */
  toldByMarks: number;
  state: readonly number[];
  /** Standard error that a mark was taken to have. */
  markSigmaPx: number;
  /** Standard error of the plane place seen at a pixel, from the marks' errors: root of the summed variances. */
  sigmaAtM(pixel: Point): number;
}

/**
 * Fits the camera; throws when fewer than four marks are given (an invariant of the caller). `from` is the state of the
 * same marks under another standard error.
 */
export function cameraFit(input: CameraFitInput, from?: readonly number[]): CameraFit {
  const problem = problemOf(input);
  const start = startOf(problem);
  let state = from ? [...from] : start;
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
  const agreeing = inverse(jacobian.transpose().mmul(jacobian));
  const covariance = Matrix.mul(agreeing, excess);
  return {
    status: run.settled ? 'converged' : 'stopped',
    camera,
    misfitPx,
    marksRmsM: Math.sqrt(squaresM.reduce((sum, value) => sum + value, 0) / marks.length),
    cost: run.cost,
    iterations: run.iterations,
    toldByMarks: toldByMarks(problem, agreeing),
    state,
    markSigmaPx: problem.usual.markSigmaPx,
    sigmaAtM: (pixel) => sigmaAt(problem, state, covariance, pixel),
  };
}

function toldByMarks({ usual }: Problem, covariance: Matrix): number {
  const { focalLogSpread, centreSpread, k1Spread, k2Spread } = usual;
  const spreads = [focalLogSpread, centreSpread, centreSpread, k1Spread, k2Spread];
  const first = parameterCount - spreads.length;
  return spreads.reduce(
    (told, spread, k) => told - covariance.get(first + k, first + k) / spread ** 2,
    parameterCount,
  );
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

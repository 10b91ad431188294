/**
 * Stiffness straight from a traced curve: EI = M/κ, beside the fit and sharing nothing with it but the blank's mass.
 *
 * The curve is cut into windows. In each, with the moment M(s) known from statics (curve-moment.ts), the places
 * follow θ' = c M, c = 1/EI taken as one value: a shift square to the curve, a turn and c, by least squares of
 *   d(s) = ∫∫ κ ds ds square to the curve, counted from the window's end nearer the hold
 * which is linear in the curvature, the seen one and c M alike, so a window that turns far needs no expansion. What
 * the fit's own stiffness would have bent there goes through the same window, so that both are averaged alike.
 *
 * ± of c: unevenness of the trace, one independent error every few centimetres; a smooth drift's own curvature
 * (0.01 1/m, judgement: 4 mm over a metre); the natural bow nobody measured; 1 % for weight, scale and statics.
 */
import { type PiecewiseLinear, piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { driftDefaults } from './curve-drift.ts';
import { curveMoment, type EvenCurve } from './curve-moment.ts';
import { bentBy, leastSquares, seenDisplacement, type Window, windowOf } from './curve-window.ts';
import { evenCurve } from './even-curve.ts';
import type { FitCurve, StiffnessBandRow } from './request.ts';

interface SecondEstimateRequest {
  curve: FitCurve;
  clampFromTipM: number;
  massPerLength: readonly { fromTipM: number; kgPerM: number }[];
  /** ± of a natural bow that was not measured, 1/m. */
  sweepSigmaPerM?: number;
  /** The fit to stand beside; best one that has not seen this photograph. */
  fitted?: readonly StiffnessBandRow[];
}

export interface WindowEstimate {
  fromTipM: number;
  toTipM: number;
  EINm2: number;
  /** 95 %. */
  lowNm2: number;
  highNm2: number;
  /** What the fit has there, averaged alike; and by how many standard deviations ln EI differs. */
  fitNm2?: number;
  sigmas?: number;
}

export interface Disagreement {
  fromTipM: number;
  toTipM: number;
  /** The photograph's stiffness over the fit's, less 1. */
  share: number;
  sigmas: number;
}

export interface SecondEstimate {
  /** Tip first; only stretches whose stiffness is told within a factor of about 1.5. */
  windows: WindowEstimate[];
  /** Stretches that are too straight, or too short, to tell anything. */
  silentM: number;
  disagreements: Disagreement[];
}

const options = {
  stepM: 0.01,
  shortestM: 0.15,
  longestM: 0.6,
  /** A window ends where its ± of ln EI falls below this; one that stays above `silent` tells nothing. */
  wanted: 0.08,
  silent: 0.2,
  errorStepM: 0.05,
  driftPerM: 0.01,
  staticsShare: 0.01,
  /** From so many standard deviations on, a stretch is named. */
  named: 3,
};

export function secondEstimate(request: SecondEstimateRequest): SecondEstimate {
  const { curve, clampFromTipM, massPerLength } = request;
  const even = evenCurve(curve.points, clampFromTipM, { stepM: options.stepM, windowM: 0.02 });
  const mass = tableOf(massPerLength, 'kgPerM');
  const moment = curveMoment(even, curve, (s) => valueAt(mass, s));
  const windows: Judged[] = [];
  let silentM = 0;
  let first = 0;
  const last = even.xM.length - 1;
  while (first < last) {
    const { end, judged } = nextWindow(even, moment, first, request);
    if (judged) windows.push(judged);
    else silentM += (end - first) * even.stepM;
    first = end;
  }
  return {
    windows: windows.map(({ estimate }) => estimate),
    silentM,
    disagreements: disagreementsOf(windows),
  };
}

interface Judged {
  estimate: WindowEstimate;
  /** Of ln EI: the photograph's ±, the fit's, and photograph less fit. */
  sigma: number;
  fitSigma: number;
  difference: number;
}

/** Grows until it tells enough; what remains at the butt joins the last one that can still grow. */
function nextWindow(even: EvenCurve, moment: Float64Array, first: number, request: SecondEstimateRequest) {
  const last = even.xM.length - 1;
  const steps = (lengthM: number) => Math.max(4, Math.round(lengthM / even.stepM));
  const farthest = Math.min(last, first + steps(options.longestM));
  let end = Math.min(farthest, first + steps(options.shortestM));
  let judged = judgeWindow(even, moment, first, end, request);
  while (end < farthest && !(judged && judged.sigma < options.wanted)) {
    end = Math.min(farthest, end + steps(0.03));
    judged = judgeWindow(even, moment, first, end, request);
  }
  const told = judged !== undefined && judged.sigma < options.silent;
  // a stub at the butt end says nothing by itself
  return { end, judged: told ? judged : undefined };
}

function judgeWindow(
  even: EvenCurve,
  moment: Float64Array,
  first: number,
  end: number,
  request: SecondEstimateRequest,
): Judged | undefined {
  const { curve, fitted, sweepSigmaPerM = 0.02 } = request;
  const local = curve.localSigmaM ?? driftDefaults.localSigmaM;
  const window = windowOf(even, moment, first, end);
  const solved = leastSquares(window.rows, seenDisplacement(even, window));
  if (!solved || !(solved.perNm2 > 0)) return undefined;
  const { perNm2, gain } = solved;
  const each = options.errorStepM / even.stepM;
  const meanMoment = rootMeanSquare(moment.subarray(first, end + 1));
  const sigma = Math.hypot(
    (local * Math.sqrt(gain * each)) / perNm2,
    options.driftPerM / (perNm2 * meanMoment),
    sweepSigmaPerM / (perNm2 * meanMoment),
    options.staticsShare,
  );
  const EINm2 = 1 / perNm2;
  const estimate: WindowEstimate = {
    fromTipM: first * even.stepM,
    toTipM: end * even.stepM,
    EINm2,
    lowNm2: EINm2 * Math.exp(-1.96 * sigma),
    highNm2: EINm2 * Math.exp(1.96 * sigma),
  };
  if (!fitted) return { estimate, sigma, fitSigma: 0, difference: 0 };
  const beside = fitInWindow(window, even, moment, fitted);
  const difference = Math.log(EINm2 / beside.EINm2);
  return {
    estimate: {
      ...estimate,
      fitNm2: beside.EINm2,
      sigmas: difference / Math.hypot(sigma, beside.sigma),
    },
    sigma,
    fitSigma: beside.sigma,
    difference,
  };
}

/** The fit's stiffness seen through the same window, and the ± of its logarithm there. */
function fitInWindow(
  window: Window,
  even: EvenCurve,
  moment: Float64Array,
  fitted: readonly StiffnessBandRow[],
) {
  const table = tableOf(fitted, 'EINm2');
  const bent = bentBy(even, moment, window.from, window.to, (s) => 1 / valueAt(table, s));
  const solved = leastSquares(window.rows, bent);
  const [from, to] = [window.from * even.stepM, window.to * even.stepM];
  const within = fitted.filter(({ fromTipM }) => fromTipM >= from && fromTipM <= to);
  const spread = within.reduce((sum, row) => sum + Math.log(row.highNm2 / row.lowNm2) / 3.92, 0);
  return { EINm2: solved ? 1 / solved.perNm2 : Number.NaN, sigma: spread / Math.max(1, within.length) };
}

/** Neighbouring windows off the same way are one stretch; the fit's own error is common to them. */
function disagreementsOf(windows: readonly Judged[]): Disagreement[] {
  const out: Disagreement[] = [];
  let run: Judged[] = [];
  const close = () => {
    const found = run.length > 0 ? combined(run) : undefined;
    if (found && Math.abs(found.sigmas) >= options.named) out.push(found);
    run = [];
  };
  for (const window of windows) {
    const off = Math.abs(window.estimate.sigmas ?? 0) >= 1.5;
    const sameWay = run.length === 0 || Math.sign(run[0].difference) === Math.sign(window.difference);
    if (!off || !sameWay) close();
    if (off) run.push(window);
  }
  close();
  return out;
}

function combined(run: readonly Judged[]): Disagreement {
  const weight = run.reduce((sum, { sigma }) => sum + 1 / sigma ** 2, 0);
  const difference = run.reduce((sum, { difference: d, sigma }) => sum + d / sigma ** 2, 0) / weight;
  const fitSigma = run.reduce((sum, { fitSigma: s }) => sum + s, 0) / run.length;
  return {
    fromTipM: run[0].estimate.fromTipM,
    toTipM: run[run.length - 1].estimate.toTipM,
    share: Math.exp(difference) - 1,
    sigmas: difference / Math.hypot(Math.sqrt(1 / weight), fitSigma),
  };
}

function rootMeanSquare(values: Float64Array): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

function tableOf<K extends string>(
  rows: readonly ({ fromTipM: number } & Record<K, number>)[],
  column: K,
): PiecewiseLinear {
  return piecewiseLinear(
    rows.map(({ fromTipM }) => fromTipM),
    rows.map((row) => row[column]),
  );
}

/**
 * Stiffness of a blank along its length, from its drops on the bench: the most probable state of all unknowns
 * (stiffness, mass, natural curvature, tilt of every set-up) under the prior of prior.ts, and its 95 % band.
 */
import { answerOf } from './answer.ts';
import { benchModel } from './bench-model.ts';
import { checkFit } from './check-fit.ts';
import { type FitProblem, findMostProbable, type MostProbable } from './most-probable.ts';
import { type Posterior, posteriorOf } from './posterior.ts';
import { independentPrior, massPrior, restPrior, stiffnessBelief, stiffnessPrior } from './prior.ts';
import type { FitAnswer, FitRequest, FitSetup } from './request.ts';
import { type Rows, rowsOf } from './rows.ts';
import { type Unknowns, unknownsOf } from './unknowns.ts';

/** The answer of the engine's door; input that makes no sense is refused with findings. */
export function fit(request: FitRequest): FitAnswer {
  return fitStiffness(request).answer;
}

export interface FitResult {
  answer: FitAnswer;
  /** For `samplePosterior`; none where the request was refused. */
  posterior?: Posterior;
}

export function fitStiffness(request: FitRequest): FitResult {
  const findings = checkFit(request);
  if (findings.length > 0) return { answer: { status: 'refused', findings } };
  const rows = rowsOf(request.blank.lengthM);
  const model = benchModel(request, rows);
  const unknowns = unknownsFor(request, rows, 1);
  const sigma = Float64Array.from(model.data, (datum) => Math.hypot(datum.sigma, 2e-4));
  const problem: FitProblem = { model, unknowns, sigma, extras: [] };
  const best = search(problem);
  const posterior = posteriorOf(request, rows, unknowns, best);
  return { answer: answerOf(problem, rows, best, posterior, []), posterior };
}

function unknownsFor(request: FitRequest, rows: Rows, roughnessScale: number): Unknowns {
  const { blank, setups } = request;
  const sweep = blank.sweepSigmaPerM ?? 0.02;
  const turnsAcross = setups.some((setup) => Math.abs(Math.sin(setup.turnedRad ?? 0)) > 1e-6);
  return unknownsOf({
    stiffness: stiffnessPrior(blank, rows, stiffnessBelief(blank, roughnessScale)),
    rest: restPrior(blank, rows, sweep),
    restAcross: restPrior(blank, rows, turnsAcross ? sweep : 0),
    mass: massPrior(blank, rows),
    tilt: independentPrior(setups.map(tiltSigma)),
    extra: independentPrior([]),
  });
}

/** A span has no tilt; left out: 1°. */
function tiltSigma(setup: FitSetup): number {
  return setup.kind === 'span' ? 1e-6 : Math.max(1e-6, setup.tiltSigmaRad ?? 0.0175);
}

/** From the best of a few levels of stiffness. */
function search(problem: FitProblem): MostProbable {
  return findMostProbable(problem, new Float64Array(problem.unknowns.size));
}

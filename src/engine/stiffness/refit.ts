/** Builds the problem of an explanation and solves it, with the blank's own roughness found on the way. */
import { benchModel } from './bench-model.ts';
import type { Doubt } from './doubts.ts';
import { type FitProblem, findMostProbable, type MostProbable } from './most-probable.ts';
import {
  independentPrior,
  massPrior,
  restPrior,
  type StiffnessPrior,
  stiffnessPrior,
  withRoughness,
} from './prior.ts';
import type { FitRequest, FitSetup } from './request.ts';
import type { Explained, Fitted } from './resolve.ts';
import { halfLogDeterminant, probableRoughness, roughnessPenalty } from './roughness.ts';
import type { Rows } from './rows.ts';
import { type GaussianPrior, standardOf, type UnknownName, type Unknowns, unknownsOf } from './unknowns.ts';

/** All priors of a request but those that change from try to try. */
export interface Priors {
  rows: Rows;
  stiffness: StiffnessPrior;
  others: Record<Exclude<UnknownName, 'stiffness' | 'extra'>, GaussianPrior>;
}

export function priorsOf({ blank, setups }: FitRequest, rows: Rows): Priors {
  const sweep = blank.sweepSigmaPerM ?? 0.02;
  const turnsAcross = setups.some((setup) => Math.abs(Math.sin(setup.turnedRad ?? 0)) > 1e-6);
  return {
    rows,
    stiffness: stiffnessPrior(blank, rows),
    others: {
      rest: restPrior(blank, rows, sweep),
      restAcross: restPrior(blank, rows, turnsAcross ? sweep : 0),
      mass: massPrior(blank, rows),
      tilt: independentPrior(setups.map(tiltSigma)),
    },
  };
}

/** A span has no tilt; left out: 1°. */
function tiltSigma(setup: FitSetup): number {
  return setup.kind === 'span' ? 1e-6 : Math.max(1e-6, setup.tiltSigmaRad ?? 0.0175);
}

function unknownsFor(priors: Priors, doubts: readonly Doubt[], roughness: number): Unknowns {
  return unknownsOf({
    ...priors.others,
    stiffness: withRoughness(priors.stiffness, roughness),
    extra: independentPrior(doubts.map((doubt) => doubt.sigma)),
  });
}

/** The readings' ± are taken `noise` times as wide; `from` a state nearby to start at. */
export function refit(explained: Explained, priors: Priors, noise: number, from?: Fitted): Fitted {
  const { request, named } = explained;
  const model =
    from && from.problem.model.request === request ? from.problem.model : benchModel(request, priors.rows);
  const doubts = named.flatMap((entry) => (entry.kind === 'doubt' ? [entry.suspicion.doubt] : []));
  const problemWith = (roughness: number): FitProblem => ({
    model,
    unknowns: unknownsFor(priors, doubts, roughness),
    sigma: sigmasOf(explained, model, noise),
    extras: doubts.map((doubt) => doubt.pattern),
  });
  const before = from?.roughness ?? 1;
  const problem = problemWith(before);
  const start = new Float64Array(problem.unknowns.size);
  if (from) start.set(from.best.u.subarray(0, Math.min(start.length, from.best.u.length)));
  const best = findMostProbable(problem, start);
  if (best.hopeless) return fittedOf(problem, best, before);
  const roughness = probableRoughness(problem, best, (factor) => unknownsFor(priors, doubts, factor));
  if (Math.abs(Math.log(roughness / before)) < 0.05) return fittedOf(problem, best, before);
  const rougher = problemWith(roughness);
  return fittedOf(rougher, findMostProbable(rougher, standardOf(rougher.unknowns, best.z)), roughness);
}

function sigmasOf({ named }: Explained, { data }: FitProblem['model'], noise: number): Float64Array {
  const leftOut = named.filter((entry) => entry.kind === 'test');
  return Float64Array.from(data, ({ kind, setup, test, sigma }) => {
    if (kind === 'mass') return sigma;
    const out = leftOut.some((entry) => entry.setup === setup && entry.test === test);
    return out ? Number.POSITIVE_INFINITY : noise * Math.hypot(sigma, 2e-4);
  });
}

function fittedOf(problem: FitProblem, best: MostProbable, roughness: number): Fitted {
  const score =
    best.objective + halfLogDeterminant(best.factor, problem.unknowns) + roughnessPenalty(roughness);
  return { problem, best, roughness, score };
}

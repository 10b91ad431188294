/** Builds the problem of an explanation and solves it, with the blank's own roughness found on the way. */
import { benchModel, standsApart } from './bench-model.ts';
import type { Doubt } from './doubts.ts';
import { carriedDoubts, type Explained, type Fitted, isCarried } from './explanation.ts';
import { type FitProblem, findMostProbable, type MostProbable, searchDefaults } from './most-probable.ts';
import type { PreparedRequest, PreparedSetup } from './prepared-request.ts';
import {
  commonRoughness,
  independentPrior,
  massPrior,
  type Roughness,
  restPrior,
  type StiffnessPrior,
  stiffnessPrior,
  withRoughness,
} from './prior.ts';
import { halfLogDeterminant, probableRoughness, roughnessPenalty } from './roughness.ts';
import type { Rows } from './rows.ts';
import {
  type GaussianPrior,
  gaussianPrior,
  standardOf,
  type UnknownName,
  type Unknowns,
  unknownsOf,
} from './unknowns.ts';

/** A tape is read to no better than this; a trace knows its own grain. */
const roundingM = 2e-4;

/** All priors of a request but those that change from try to try: roughness, clamps, drifts, doubts. */
export interface Priors {
  rows: Rows;
  stiffness: StiffnessPrior;
  others: Record<Exclude<UnknownName, 'stiffness' | 'tilt' | 'drift' | 'extra'>, GaussianPrior>;
}

export function priorsOf({ blank, setups }: PreparedRequest, rows: Rows): Priors {
  const sweep = blank.sweepSigmaPerM ?? 0.02;
  const turnsAcross = setups.some((setup) => Math.abs(Math.sin(setup.turnedRad ?? 0)) > 1e-6);
  return {
    rows,
    stiffness: stiffnessPrior(blank, rows),
    others: {
      rest: restPrior(blank, rows, sweep),
      restAcross: restPrior(blank, rows, turnsAcross ? sweep : 0),
      mass: massPrior(blank, rows),
    },
  };
}

/** A span has no tilt; left out: 1°. */
function tiltSigma(setup: PreparedSetup): number {
  return setup.kind === 'span' ? 1e-6 : Math.max(1e-6, setup.tiltSigmaRad ?? 0.0175);
}

/** What one clamp may give between two pictures; far below what a picture shows of it. */
const giveRad = 1e-4;

/** Set-ups in one clamp tilt alike. */
function tiltPrior(setups: readonly PreparedSetup[]): GaussianPrior {
  const n = setups.length;
  const covariance = new Float64Array(n * n);
  const clampedAs = setups.map((setup, s) => (setup.kind !== 'span' && setup.clampedAs) || s);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (clampedAs[i] === clampedAs[j]) covariance[i * n + j] = tiltSigma(setups[i]) * tiltSigma(setups[j]);
    }
    if (typeof clampedAs[i] === 'string') covariance[i * n + i] += giveRad ** 2;
  }
  return gaussianPrior(new Float64Array(n), covariance);
}

export function unknownsFor(
  priors: Priors,
  { setups, driftSigmas }: PreparedRequest,
  doubts: readonly Doubt[],
  roughness: Roughness,
): Unknowns {
  return unknownsOf({
    ...priors.others,
    tilt: tiltPrior(setups),
    drift: independentPrior(driftSigmas),
    stiffness: withRoughness(priors.stiffness, roughness),
    extra: independentPrior(doubts.map((doubt) => doubt.sigma)),
  });
}

/** A traced curve is read so finely that a search from afar is first led with readings so many times coarser. */
const leadingNoise = 15;

/** The readings' ± are taken `noise` times as wide; `from` a state nearby to start at. */
export function refit(
  explained: Explained,
  priors: Priors,
  noise: number,
  from?: Fitted,
  giveUpAt?: number,
): Fitted {
  const curved = explained.request.setups.some((setup) => setup.kind !== 'span' && setup.curve);
  const lead = !from && curved ? solve(explained, priors, leadingNoise * noise) : undefined;
  return solve(explained, priors, noise, lead && !lead.best.hopeless ? lead : from, giveUpAt);
}

function solve(
  explained: Explained,
  priors: Priors,
  noise: number,
  from?: Fitted,
  giveUpAt = searchDefaults.giveUpAt,
): Fitted {
  const search = { ...searchDefaults, giveUpAt };
  const { request, named } = explained;
  const model =
    from && from.problem.model.request === request ? from.problem.model : benchModel(request, priors.rows);
  const doubts = carriedDoubts(named);
  const problemWith = (roughness: Roughness): FitProblem => ({
    model,
    unknowns: unknownsFor(priors, request, doubts, roughness),
    sigma: sigmasOf(explained, model, noise),
    extras: doubts.map((doubt) => doubt.pattern),
  });
  const before = from?.roughness ?? commonRoughness;
  const problem = problemWith(before);
  const start = new Float64Array(problem.unknowns.size);
  if (from) start.set(from.best.u.subarray(0, Math.min(start.length, from.best.u.length)));
  const best = findMostProbable(problem, start, search);
  if (best.hopeless) return fittedOf(problem, best, before);
  const tellsShort = request.setups.some((setup) => setup.kind !== 'span' && setup.clampedAs !== undefined);
  const roughness = probableRoughness(problem, best, tellsShort, (tried) =>
    withRoughness(priors.stiffness, tried),
  );
  if (isAlike(roughness, before)) return fittedOf(problem, best, before);
  const rougher = problemWith(roughness);
  const again = findMostProbable(rougher, standardOf(rougher.unknowns, best.z), search);
  return fittedOf(rougher, again, roughness);
}

function isAlike(a: Roughness, b: Roughness): boolean {
  return Math.max(Math.abs(Math.log(a.waves / b.waves)), Math.abs(Math.log(a.short / b.short))) < 0.05;
}

/** Infinite for what an explanation leaves out. */
function sigmasOf({ named }: Explained, { data }: FitProblem['model'], noise: number): Float64Array {
  const sigmas = Float64Array.from(data, (datum) =>
    standsApart(datum)
      ? datum.sigma
      : noise * Math.hypot(datum.sigma, datum.kind === 'place' ? 0 : roundingM),
  );
  for (const entry of named) {
    if (entry.kind === 'doubt' && !isCarried(entry.suspicion.doubt)) {
      for (const d of entry.suspicion.doubt.data) sigmas[d] = Number.POSITIVE_INFINITY;
    }
    if (entry.kind !== 'test') continue;
    data.forEach(({ setup, test }, d) => {
      if (setup === entry.setup && test === entry.test) sigmas[d] = Number.POSITIVE_INFINITY;
    });
  }
  return sigmas;
}

function fittedOf(problem: FitProblem, best: MostProbable, roughness: Roughness): Fitted {
  const score =
    best.objective + halfLogDeterminant(best.factor, problem.unknowns) + roughnessPenalty(roughness);
  return { problem, best, roughness, score };
}

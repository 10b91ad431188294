/**
 * Stiffness of a blank along its length, from its drops on the bench: the most probable state of all unknowns
 * (stiffness, mass, natural curvature, tilt of every set-up) under the prior of prior.ts, its 95 % band, and
 * the readings that do not belong.
 */

import type { Finding } from '../finding.ts';
import { answerOf } from './answer.ts';
import { checkFit } from './check-fit.ts';
import { clampsByTapes } from './clamp-by-tapes.ts';
import { type SlipPlace, slipPlaces } from './explanation.ts';
import { farFromBelief } from './far-from-belief.ts';
import { fitFound } from './fit-kinds.ts';
import { gauged } from './gauge-stand.ts';
import { howRead } from './how-read.ts';
import { likelihoodOf, linearReadings, type StiffnessLikelihood } from './likelihood.ts';
import { mixtureOf } from './mixture.ts';
import { noiseFactor } from './noise.ts';
import { oddOfBlank, sayOdd, withoutDiameter } from './odd-diameter-of-blank.ts';
import { type Posterior, posteriorOf } from './posterior.ts';
import { prepared } from './prepared.ts';
import { priorsOf, refit } from './refit.ts';
import type { FitAnswer, FitRequest } from './request.ts';
import { resolveDoubts } from './resolve.ts';
import { rowsOf } from './rows.ts';
import { findingsOf } from './say-doubt.ts';
import { holdFindings, levelFindings } from './say-stand.ts';

/** The answer of the engine's door; input that makes no sense is refused with findings. */
export function fit(request: FitRequest): FitAnswer {
  return fitStiffness(request).answer;
}

export interface FitResult {
  answer: FitAnswer;
  /** For `samplePosterior`; none where the request was refused. */
  posterior?: Posterior;
  /** What is held to have gone wrong, and with each what explains the readings almost as well. */
  slips?: SlipPlace[][];
  /** What the readings alone say of the stiffness, for learning from several blanks. */
  likelihood?: () => StiffnessLikelihood;
}

export function fitStiffness(request: FitRequest): FitResult {
  const findings = checkFit(request);
  if (findings.length > 0) return { answer: { status: 'refused', findings } };
  const rows = rowsOf(request.blank.lengthM);
  const odd = oddOfBlank(request.blank);
  const { request: byTapes, findings: clampsMoved } = clampsByTapes(request);
  const asTaken = prepared({ ...byTapes, blank: odd ? withoutDiameter(request.blank, odd) : request.blank });
  const priors = priorsOf(asTaken, rows);
  const ready = gauged(asTaken, priors);
  const { explained, fitted } = resolveDoubts(
    ready.request,
    (next, from, giveUpAt) => refit(next, priors, 1, from, giveUpAt),
    ready.fitted,
  );
  const noise = noiseFactor(fitted.problem, fitted.best);
  const { problem, best, roughness } = noise > 1.02 ? refit(explained, priors, noise, fitted) : fitted;
  const readings = linearReadings(problem, best);
  const mixture = mixtureOf(readings, priors.stiffness, rows, { lengthM: request.blank.lengthM, roughness });
  const posterior = posteriorOf(request, rows, best, { mixture, problem, best });
  const named = findingsOf(explained, problem, best);
  const said = [
    ...(howRead(request) === 'nothing' ? [nothingRead] : []),
    ...(odd ? [sayOdd(request.blank, odd)] : []),
    ...clampsMoved,
    ...named,
    ...holdFindings(problem, named),
    ...levelFindings(problem, best),
    ...scatterFinding(noise),
    ...farFromBelief(best, priors.stiffness, problem.unknowns.stiffness),
  ];
  return {
    answer: answerOf(problem, best, posterior, said),
    posterior,
    slips: slipPlaces(explained, problem.model.data),
    likelihood: () => likelihoodOf(problem, best),
  };
}

const nothingRead = fitFound('setups', 'fit/nothing-read', {});

function scatterFinding(noise: number): Finding[] {
  if (noise < 1.6) return [];
  return [fitFound('setups', 'fit/scatter', { times: noise })];
}

/**
 * Stiffness of a blank along its length, from its drops on the bench: the most probable state of all unknowns
 * (stiffness, mass, natural curvature, tilt of every set-up) under the prior of prior.ts, its 95 % band, and
 * the readings that do not belong.
 */

import type { Finding } from '../finding.ts';
import { said } from '../finding.ts';
import { answerOf } from './answer.ts';
import { checkFit } from './check-fit.ts';
import { type SlipPlace, slipPlaces } from './explanation.ts';
import { gauged } from './gauge-stand.ts';
import { likelihoodOf, type StiffnessLikelihood } from './likelihood.ts';
import { noiseFactor } from './noise.ts';
import { type Posterior, posteriorOf, standardDeviations } from './posterior.ts';
import { prepared } from './prepare-request.ts';
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
  const priors = priorsOf(prepared(request), rows);
  const ready = gauged(prepared(request), priors);
  const { explained, fitted } = resolveDoubts(ready, (next, from) => refit(next, priors, 1, from));
  const noise = noiseFactor(fitted.problem, fitted.best);
  const { problem, best } = noise > 1.02 ? refit(explained, priors, noise, fitted) : fitted;
  const posterior = posteriorOf(request, rows, problem.unknowns, best);
  const named = findingsOf(explained, problem, best);
  const said = [
    ...named,
    ...holdFindings(problem, named),
    ...levelFindings(problem, best, standardDeviations(posterior)),
    ...scatterFinding(noise),
  ];
  return {
    answer: answerOf(problem, rows, best, posterior, said),
    posterior,
    slips: slipPlaces(explained, problem.model.data),
    likelihood: () => likelihoodOf(problem, best),
  };
}

function scatterFinding(noise: number): Finding[] {
  if (noise < 1.6) return [];
  return [
    said(
      'setups',
      `the readings scatter about ${noise.toFixed(1)} times as much as stated; the band is widened for it. State a wider ±, or look for a blank that creeps, a draught or a moving clamp`,
    ),
  ];
}

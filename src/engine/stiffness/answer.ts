import type { Finding } from '../finding.ts';
import { standsApart } from './bench-model.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { type Posterior, rodOf, standardDeviations } from './posterior.ts';
import type { FitSolved } from './request.ts';
import type { Rows } from './rows.ts';

/** The door's answer: tables, bands, tilts, findings. The band is 1.96 standard deviations of ln EI each way. */
export function answerOf(
  problem: FitProblem,
  rows: Rows,
  best: MostProbable,
  posterior: Posterior,
  findings: Finding[],
): FitSolved {
  const { unknowns, model } = problem;
  const { z } = best;
  const sigma = standardDeviations(posterior);
  const rod = rodOf(posterior, z);
  return {
    ...statusOf(best),
    stiffness: Array.from(rows.fine, (fromTipM, i) => {
      const at = unknowns.stiffness.start + i;
      const reach = 1.96 * sigma[at];
      return {
        fromTipM,
        EINm2: Math.exp(z[at]),
        lowNm2: Math.exp(z[at] - reach),
        highNm2: Math.exp(z[at] + reach),
      };
    }),
    massPerLength: [...(rod.massPerLength ?? [])],
    restCurvature: [...(rod.restCurvature ?? [])],
    tiltRad: model.setups.map(({ span }, s) => (span ? 0 : z[unknowns.tilt.start + s])),
    residualRmsM: residualRms(problem, best),
    findings,
    iterations: best.iterations,
  };
}

function statusOf(best: MostProbable): Pick<FitSolved, 'status' | 'reason'> {
  if (best.converged) return { status: 'converged' };
  const reason = best.equilibria
    ? `the search for the most probable stiffness did not settle in ${best.iterations} steps`
    : 'under some test the blank finds no bend that the readings could belong to';
  return { status: 'not-converged', reason };
}

function residualRms({ model, sigma }: FitProblem, best: MostProbable): number {
  let sum = 0;
  let count = 0;
  model.data.forEach((datum, d) => {
    if (standsApart(datum) || datum.kind === 'length' || !Number.isFinite(sigma[d])) return;
    sum += (datum.value - best.prediction.value[d]) ** 2;
    count++;
  });
  return count > 0 ? Math.sqrt(sum / count) : 0;
}

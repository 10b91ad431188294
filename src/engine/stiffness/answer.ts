import type { Finding } from '../finding.ts';
import { standsApart } from './bench-model.ts';
import { fitReason } from './fit-kinds.ts';
import { mixtureBand } from './mixture-band.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { type Posterior, rodOf } from './posterior.ts';
import type { FitSolved } from './request.ts';

/** The door's answer: the likeliest blank, the band over all kinds that the readings leave, tilts, findings. */
export function answerOf(
  problem: FitProblem,
  best: MostProbable,
  posterior: Posterior,
  findings: Finding[],
): FitSolved {
  const { unknowns, model } = problem;
  const { z } = best;
  const rod = rodOf(posterior, z);
  const [low, high] = mixtureBand(posterior.drawing.mixture, [0.025, 0.975]);
  return {
    ...statusOf(best),
    stiffness: rod.stiffness.map(({ fromTipM, EINm2 }, i) => ({
      fromTipM,
      EINm2,
      lowNm2: Math.min(EINm2, Math.exp(low[i])),
      highNm2: Math.max(EINm2, Math.exp(high[i])),
    })),
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
    ? fitReason('fit/unsettled', { steps: best.iterations })
    : fitReason('fit/no-bend', {});
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

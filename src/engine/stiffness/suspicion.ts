/**
 * How strongly the data speak for a doubt. With e the standardised misfit at the minimum, Q = I - Ã A⁻¹ Ãᵀ and
 * v the doubt's standardised pattern, freeing its amplitude lowers 2 Φ by (vᵀe)² / (vᵀQv + 1/τ²), τ the
 * amplitude's prior standard deviation (data snooping, Baarda 1968, for a Bayesian adjustment).
 */
import { solveLower } from '../numerics/cholesky.ts';
import type { Doubt } from './doubts.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';

export interface Suspicion {
  doubt: Doubt;
  /** By how much 2 Φ would fall. */
  gain: number;
  /** In the doubt's own unit. */
  amplitude: number;
}

/** Strongest first. */
export function weighDoubts(
  doubts: readonly Doubt[],
  { sigma, unknowns }: FitProblem,
  best: MostProbable,
): Suspicion[] {
  const n = unknowns.size;
  const across = new Float64Array(n);
  return doubts
    .map((doubt) => {
      let along = 0;
      let square = 1 / doubt.sigma ** 2;
      across.fill(0);
      for (const { datum, amount } of doubt.pattern) {
        const v = (amount * Math.sqrt(best.weight[datum])) / sigma[datum];
        along += v * best.misfit[datum];
        square += v * v;
        for (let k = 0; k < n; k++) across[k] += v * best.design[datum * n + k];
      }
      solveLower(best.factor, n, across, across);
      for (let k = 0; k < n; k++) square -= across[k] * across[k];
      return {
        doubt,
        gain: (along * along) / square,
        amplitude: along / square,
      };
    })
    .sort((a, b) => b.gain - a.gain);
}

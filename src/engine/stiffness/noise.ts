/**
 * How much the readings really scatter, as a factor on their stated ±. A stated ± is never narrowed: readings
 * that agree better than they should are taken as luck; a little prior weight keeps few readings from widening
 * it by chance.
 */
import { solveLower } from '../numerics/cholesky.ts';
import { standsApart } from './bench-model.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';

/** Q_dd per datum: the share of its own error that shows in its misfit. */
function redundancies({ unknowns }: FitProblem, { design, factor, misfit }: MostProbable): Float64Array {
  const n = unknowns.size;
  const row = new Float64Array(n);
  return misfit.map((_, d) => {
    solveLower(factor, n, design.subarray(d * n, (d + 1) * n), row);
    let seen = 0;
    for (let k = 0; k < n; k++) seen += row[k] * row[k];
    return Math.max(0, 1 - seen);
  });
}

/** From the median of the misfits, which a few gross errors do not move; at least 1. */
export function robustNoiseFactor(problem: FitProblem, best: MostProbable): number {
  const q = redundancies(problem, best);
  const sizes: number[] = [];
  best.misfit.forEach((e, d) => {
    if (isReading(problem, d) && q[d] > 0.05) sizes.push(Math.abs(e) / Math.sqrt(q[d]));
  });
  if (sizes.length < 6) return 1;
  sizes.sort((a, b) => a - b);
  const middle = sizes[sizes.length >> 1] / 0.6745;
  return Math.sqrt(Math.max(1, withPriorWeight(middle * middle * sizes.length, sizes.length)));
}

/** From all misfits; at least 1. */
export function noiseFactor(problem: FitProblem, best: MostProbable): number {
  const q = redundancies(problem, best);
  let square = 0;
  let freedom = 0;
  best.misfit.forEach((e, d) => {
    if (!isReading(problem, d)) return;
    square += e * e;
    freedom += q[d];
  });
  return Math.sqrt(Math.max(1, withPriorWeight(square, freedom)));
}

/** How finely the traced places of the set-ups asked for were read, m: from the median of their misfits. */
export function tracedGrainM(problem: FitProblem, best: MostProbable, setups: ReadonlySet<number>): number {
  const q = redundancies(problem, best);
  const sizes: number[] = [];
  problem.model.data.forEach(({ kind, setup }, d) => {
    if (kind !== 'place' || !setups.has(setup) || q[d] < 0.05) return;
    sizes.push((Math.abs(best.misfit[d]) * problem.sigma[d]) / Math.sqrt(q[d]));
  });
  sizes.sort((a, b) => a - b);
  return (sizes[sizes.length >> 1] ?? 0) / 0.6745;
}

/** Mean square with the weight of ten readings that scatter as stated. */
function withPriorWeight(square: number, freedom: number): number {
  return (square + 10) / (freedom + 10);
}

function isReading({ model, sigma }: FitProblem, d: number): boolean {
  return !standsApart(model.data[d]) && Number.isFinite(sigma[d]);
}

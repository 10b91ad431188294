/**
 * What the readings alone say of ln EI, whatever is believed beforehand: the fit's linear model at its answer,
 *
 *   y = D z + N v + ε,   ε ~ N(0, I),  v ~ N(0, I) the other unknowns (mass, tilt, natural curvature, doubts)
 *
 * so y | z ~ N(D z, I + N Nᵀ). Readings that were set aside are left out.
 */
import type { FitProblem, MostProbable } from './most-probable.ts';

export interface StiffnessLikelihood {
  readonly count: number;
  /** count × 81, ∂y/∂ln EI at the fine rows. */
  readonly design: Float64Array;
  readonly observed: Float64Array;
  /** count × count. */
  readonly covariance: Float64Array;
}
export interface LinearReadings extends StiffnessLikelihood {
  /** The datum behind each row, and 1/σ, lessened where a reading is counted for less. */
  readonly data: readonly number[];
  readonly scale: Float64Array;
  /** Rows of N over all unknowns, 0 at the stiffness. */
  readonly others: readonly Float64Array[];
}

export function likelihoodOf(problem: FitProblem, best: MostProbable): StiffnessLikelihood {
  const { count, design, observed, covariance } = linearReadings(problem, best);
  return { count, design, observed, covariance };
}

export function linearReadings({ model, unknowns, sigma }: FitProblem, best: MostProbable): LinearReadings {
  const { size: all, stiffness } = unknowns;
  const data = model.data.map((_, d) => d).filter((d) => Number.isFinite(sigma[d]));
  const [count, width] = [data.length, stiffness.size];
  const design = new Float64Array(count * width);
  const observed = new Float64Array(count);
  const scale = Float64Array.from(data, (d) => Math.sqrt(best.weight[d]) / sigma[d]);
  const others = data.map((d) => {
    const row = best.design.slice(d * all, (d + 1) * all);
    row.fill(0, stiffness.start, stiffness.start + width);
    return row;
  });
  data.forEach((d, i) => {
    observed[i] = best.misfit[d];
    for (let k = 0; k < width; k++) {
      const slope = scale[i] * best.prediction.jacobian[d * all + stiffness.start + k];
      design[i * width + k] = slope;
      observed[i] += slope * best.z[stiffness.start + k];
    }
    for (let k = 0; k < all; k++) observed[i] += others[i][k] * best.u[k];
  });
  return { count, design, observed, covariance: onePlusGram(others), data, scale, others };
}

function onePlusGram(rows: readonly Float64Array[]): Float64Array {
  const n = rows.length;
  const gram = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = i === j ? 1 : 0;
      for (let k = 0; k < rows[i].length; k++) sum += rows[i][k] * rows[j][k];
      gram[i * n + j] = sum;
      gram[j * n + i] = sum;
    }
  }
  return gram;
}

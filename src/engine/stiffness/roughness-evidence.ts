/**
 * What the linearised readings say of the stiffness's prior, all other unknowns integrated out once. With y what each
 * reading should give over its ±, J its row of the stiffness in natural units and O its row of the other, standard
 * unknowns:
 *
 *   W = I - O (I + OᵀO)⁻¹ Oᵀ,   K = JᵀWJ,   c = JᵀWy
 *   ln p(y | L) = ½ (Lᵀc)ᵀ (I + LᵀKL)⁻¹ (Lᵀc) - ½ ln det(I + LᵀKL) + what no L changes
 *
 * for the prior ln EI = mean + L u. The determinant leaves out what doubts were freed, as every score does.
 */
import { logDeterminant, solveLower } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import { gramMatrix } from '../numerics/gram-matrix.ts';
import { type FitProblem, factorNormal, type MostProbable } from './most-probable.ts';
import type { GaussianPrior } from './unknowns.ts';

export function stiffnessEvidence(
  problem: FitProblem,
  best: MostProbable,
): (stiffness: GaussianPrior) => number {
  const { all, wanted, kept } = withoutOthers(problem, best);
  const { size } = problem.unknowns.stiffness;
  return ({ factor: prior }) => {
    const normal = normalUnder(prior, all, size);
    const right = new Float64Array(size);
    for (let i = 0; i < size; i++) for (let k = 0; k <= i; k++) right[k] += prior[i * size + k] * wanted[i];
    const factor = factorNormal(normal, size);
    solveLower(factor, size, right, right);
    const volume = kept === all ? factor : factorNormal(normalUnder(prior, kept, size), size);
    return 0.5 * (dot(right, right) - logDeterminant(volume, size));
  };
}

interface WithoutOthers {
  /** K and c. */
  all: Float64Array;
  wanted: Float64Array;
  /** K with the extra unknowns held at nothing. */
  kept: Float64Array;
}

function withoutOthers(problem: FitProblem, best: MostProbable): WithoutOthers {
  const { size: n, extra, stiffness } = problem.unknowns;
  const { size } = stiffness;
  const others = n - size;
  const gram = gramMatrix(othersFirst(problem, best), n + 1);
  const shared = sharedWithOthers(gram, n + 1, others);
  const left = (less: Float64Array) => {
    const k = new Float64Array(size * size);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) {
        const value = gram[(others + i) * (n + 1) + others + j] - less[i * (size + 1) + j];
        k[i * size + j] = value;
        k[j * size + i] = value;
      }
    }
    return k;
  };
  const taken = gramMatrix(shared, size + 1);
  const all = left(taken);
  const last = { gram: n * (n + 1) + others, taken: size * (size + 1) };
  const wanted = Float64Array.from({ length: size }, (_, i) => gram[last.gram + i] - taken[last.taken + i]);
  if (extra.size === 0) return { all, wanted, kept: all };
  const ofKept = shared.subarray(0, (others - extra.size) * (size + 1));
  return { all, wanted, kept: left(gramMatrix(ofKept, size + 1)) };
}

/** O, J and y side by side, a row per reading; what it should give counts from the prior's mean. */
function othersFirst({ model, sigma, unknowns }: FitProblem, best: MostProbable): Float64Array {
  const { size: n, mean, stiffness } = unknowns;
  const { size } = stiffness;
  const { jacobian } = best.prediction;
  const design = new Float64Array(model.data.length * (n + 1));
  model.data.forEach((_, d) => {
    const scale = Math.sqrt(best.weight[d]) / sigma[d];
    const [from, to] = [d * n, d * (n + 1)];
    for (let k = size; k < n; k++) design[to + k - size] = best.design[from + k];
    for (let k = 0; k < size; k++) design[to + n - size + k] = scale * jacobian[from + k];
    let wanted = best.misfit[d];
    for (let k = 0; k < n; k++) wanted += scale * jacobian[from + k] * (best.z[k] - mean[k]);
    design[to + n] = wanted;
  });
  return design;
}

/** C⁻¹ Oᵀ[J y], C Cᵀ = I + OᵀO; a row for each of the others. */
function sharedWithOthers(gram: Float64Array, width: number, others: number): Float64Array {
  const factor = factorOfOthers(gram, width, others);
  const columns = width - others;
  const shared = new Float64Array(others * columns);
  const column = new Float64Array(others);
  for (let i = 0; i < columns; i++) {
    for (let k = 0; k < others; k++) column[k] = gram[(others + i) * width + k];
    solveLower(factor, others, column, column);
    for (let k = 0; k < others; k++) shared[k * columns + i] = column[k];
  }
  return shared;
}

function factorOfOthers(gram: Float64Array, width: number, others: number): Float64Array {
  const normal = new Float64Array(others * others);
  for (let i = 0; i < others; i++) {
    for (let j = 0; j <= i; j++) normal[i * others + j] = gram[i * width + j] + (i === j ? 1 : 0);
  }
  return factorNormal(normal, others);
}

/** I + LᵀKL, lower triangle. */
function normalUnder(prior: Float64Array, k: Float64Array, n: number): Float64Array {
  const product = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let m = 0; m < n; m++) {
      const value = k[i * n + m];
      for (let j = 0; j <= m; j++) product[i * n + j] += value * prior[m * n + j];
    }
  }
  const normal = new Float64Array(n * n);
  for (let m = 0; m < n; m++) {
    for (let i = 0; i <= m; i++) {
      const value = prior[m * n + i];
      for (let j = 0; j <= i; j++) normal[i * n + j] += value * product[m * n + j];
    }
  }
  for (let i = 0; i < n; i++) normal[i * n + i] += 1;
  return normal;
}

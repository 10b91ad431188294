import { floatPool } from './float-pool.ts';

/**
 * Symmetric systems  (T + Σ_k c_k a_k a_kᵀ) x = b  with T tridiagonal and the supports of the a_k forming a
 * chain: span k covers the unknowns `last[k]` down to `first[k]`, and first[k] = last[k + 1] (two neighbours
 * share one unknown), spans counted from the high end. Each rank-one term is carried as one extra unknown
 * λ_k = c_k a_kᵀ x and eliminated as soon as its span is done, so the whole solve is O(n).
 *
 * Inertia: the matrix is positive definite exactly when the elimination meets one negative pivot per span
 * (Haynsworth 1968, additivity of inertia for Schur complements).
 */
export interface ChainedTridiagonal {
  readonly n: number;
  readonly diagonal: Float64Array;
  /** off[i] couples i and i - 1; off[0] is not used. */
  readonly off: Float64Array;
  /** Spans in use; 0 leaves a plain tridiagonal matrix. */
  spanCount: number;
  readonly last: Int32Array;
  /** first[k]; -1 where the span runs on to the fixed end below unknown 0. */
  readonly first: Int32Array;
  readonly weight: Float64Array;
  /** a_k at unknowns where span k is inner or at its high end. */
  readonly inner: Float64Array;
  /** a_k at its low end first[k], one per span. */
  readonly lowEnd: Float64Array;
  readonly factor: Factor;
}

interface Factor {
  /** One over the pivot of each unknown. */
  readonly overPivot: Float64Array;
  /** Border of the span that is inner at i, and of the one that ends at i, when i is eliminated. */
  readonly borderInner: Float64Array;
  readonly borderEnding: Float64Array;
  readonly spanPivot: Float64Array;
  readonly spanToUnknown: Float64Array;
  readonly spanToNext: Float64Array;
  /** Inner span of each unknown, or -1. */
  readonly spanAt: Int32Array;
  /** Span whose low end is this unknown, or -1. */
  readonly endingAt: Int32Array;
  readonly rhs: Float64Array;
  readonly spanRhs: Float64Array;
  readonly lambda: Float64Array;
}

export function chainedTridiagonal(n: number, maxSpans: number): ChainedTridiagonal {
  const f = floatPool(8 * n + 8 * (maxSpans + 1));
  return {
    n,
    diagonal: f(n),
    off: f(n),
    spanCount: 0,
    last: new Int32Array(maxSpans),
    first: new Int32Array(maxSpans),
    weight: f(maxSpans),
    inner: f(n),
    lowEnd: f(maxSpans),
    factor: {
      overPivot: f(n),
      borderInner: f(n),
      borderEnding: f(n),
      spanPivot: f(maxSpans + 1),
      spanToUnknown: f(maxSpans + 1),
      spanToNext: f(maxSpans + 1),
      spanAt: new Int32Array(n),
      endingAt: new Int32Array(n),
      rhs: f(n),
      spanRhs: f(maxSpans + 1),
      lambda: f(maxSpans + 1),
    },
  };
}

/**
 * Factors the matrix in place of `system.factor`; true where it is positive definite. One straight-line
 * elimination from the high end, kept whole because its steps share all their state.
 */
export function factorChained(system: ChainedTridiagonal): boolean {
  const { n, diagonal, off, spanCount, last, first, weight, inner, lowEnd, factor } = system;
  const { overPivot, borderInner, borderEnding, spanPivot, spanToUnknown, spanToNext, spanAt, endingAt } =
    factor;
  let negative = 0;
  let span = -1; // the span that is inner at i
  let carriedPivot = 0; // Schur complement of its λ so far
  let fillInner = 0; // fill of its border from the unknown above
  let diagonalUpdate = 0;

  for (let i = n - 1; i >= 0; i--) {
    let ending = -1;
    let endingBorder = 0;
    let endingPivot = 0;
    if (span >= 0 && first[span] === i) {
      // span ends here: its border takes the low end's entry, and the next span begins
      ending = span;
      endingBorder = fillInner + lowEnd[span];
      endingPivot = carriedPivot;
      fillInner = 0;
      span = span + 1 < spanCount ? span + 1 : -1;
      if (span >= 0) carriedPivot = -1 / weight[span];
    } else if (span < 0 && spanCount > 0 && ending < 0 && last[0] === i) {
      span = 0;
      carriedPivot = -1 / weight[0];
      fillInner = 0;
    }
    const border = span >= 0 ? inner[i] + fillInner : 0;

    // eliminate unknown i
    let d = diagonal[i] + diagonalUpdate;
    if (d === 0) d = Number.MIN_VALUE * 2 ** 60;
    if (d < 0) negative++;
    const over = 1 / d;
    overPivot[i] = over;
    borderInner[i] = border;
    borderEnding[i] = endingBorder;
    spanAt[i] = span;
    endingAt[i] = ending;
    const o = off[i];
    const scaledOff = o * over;
    diagonalUpdate = -o * scaledOff;
    carriedPivot -= border * border * over;
    fillInner = -scaledOff * border;

    if (ending >= 0) {
      // eliminate λ of the span that ended: it touches unknown i - 1 by fill, and the next span's λ
      const p = endingPivot - endingBorder * endingBorder * over;
      const toUnknown = -scaledOff * endingBorder;
      const toNext = -border * endingBorder * over;
      if (p < 0) negative++;
      spanPivot[ending] = p;
      spanToUnknown[ending] = toUnknown;
      spanToNext[ending] = toNext;
      diagonalUpdate -= (toUnknown * toUnknown) / p;
      carriedPivot -= (toNext * toNext) / p;
      fillInner -= (toUnknown * toNext) / p;
    }
  }
  if (span >= 0) {
    if (carriedPivot < 0) negative++;
    spanPivot[span] = carriedPivot;
    spanToUnknown[span] = 0;
    spanToNext[span] = 0;
  }
  return negative === spanCount;
}

/** Solves with the factor at hand; `b` and `x` may be the same array. */
export function solveChained(system: ChainedTridiagonal, b: Float64Array, x: Float64Array): void {
  const { n, off, spanCount, first, factor } = system;
  const { overPivot, borderInner, borderEnding, spanPivot, spanToUnknown, spanToNext, spanAt, endingAt } =
    factor;
  const { rhs, spanRhs, lambda } = factor;
  spanRhs.fill(0, 0, spanCount + 1);

  // forward: the same eliminations on the right-hand side
  let carried = 0;
  for (let i = n - 1; i >= 0; i--) {
    const value = b[i] + carried;
    rhs[i] = value;
    const scaled = value * overPivot[i];
    carried = -off[i] * scaled;
    const span = spanAt[i];
    if (span >= 0) spanRhs[span] -= borderInner[i] * scaled;
    const ending = endingAt[i];
    if (ending >= 0) {
      spanRhs[ending] -= borderEnding[i] * scaled;
      const scaledSpan = spanRhs[ending] / spanPivot[ending];
      carried -= spanToUnknown[ending] * scaledSpan;
      if (span >= 0) spanRhs[span] -= spanToNext[ending] * scaledSpan;
    }
  }

  // backward
  const bottom = spanAt[0];
  if (bottom >= 0 && first[bottom] < 0) lambda[bottom] = spanRhs[bottom] / spanPivot[bottom];
  let below = 0;
  for (let i = 0; i < n; i++) {
    const span = spanAt[i];
    const lambdaInner = span >= 0 ? lambda[span] : 0;
    const ending = endingAt[i];
    let value = rhs[i] - off[i] * below - borderInner[i] * lambdaInner;
    if (ending >= 0) {
      lambda[ending] =
        (spanRhs[ending] - spanToUnknown[ending] * below - spanToNext[ending] * lambdaInner) /
        spanPivot[ending];
      value -= borderEnding[i] * lambda[ending];
    }
    below = value * overPivot[i];
    x[i] = below;
  }
}

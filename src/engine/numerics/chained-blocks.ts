import { floatPool } from './float-pool.ts';

/**
 * The spatial sister of chained-tridiagonal.ts: unknowns in blocks of three, (T + Σ_k c_k A_k A_kᵀ) x = b with T
 * block tridiagonal and A_k of two columns, whose supports form a chain (first[k] = last[k + 1]). Each A_k is
 * carried as two more unknowns λ_k = c_k A_kᵀ x and eliminated as soon as its span is done: O(n).
 *
 * Inertia: positive definite exactly when the elimination meets two negative pivots per span (Haynsworth 1968).
 */
export interface ChainedBlocks {
  /** Blocks. */
  readonly n: number;
  /** Per block xx, yy, zz, xy, xz, yz. */
  readonly diagonal: Float64Array;
  /** Per block i the coupling to block i - 1, nine by rows; block 0 has none. */
  readonly off: Float64Array;
  /** Spans in use; 0 leaves a plain block tridiagonal matrix. */
  spanCount: number;
  readonly last: Int32Array;
  /** first[k]; -1 where the span runs on to the fixed end below block 0. */
  readonly first: Int32Array;
  readonly weight: Float64Array;
  /** The two columns of A_k at blocks where span k is inner or at its high end: three and three. */
  readonly inner: Float64Array;
  /** The same at its low end first[k], per span. */
  readonly lowEnd: Float64Array;
  readonly factor: Factor;
}

interface Factor {
  /** Per block: see `slot`. */
  readonly block: Float64Array;
  /** Per span: inverse pivot 3 (xx, yy, xy), border to the block below 6, coupling to the next span 4. */
  readonly span: Float64Array;
  readonly spanAt: Int32Array;
  readonly endingAt: Int32Array;
  readonly rhs: Float64Array;
  readonly lambda: Float64Array;
  /** Fill on its way down: diagonal 6, inner border 6, the span's pivot 3. */
  readonly carry: Float64Array;
}

/** Where a block's factor keeps L (21, 31, 32), one over its pivots, and L⁻¹ of coupling, inner, ending border. */
export const slot = { size: 27, over: 3, off: 6, inner: 15, ending: 21 };
export const spanSize = 13;

export function chainedBlocks(n: number, maxSpans: number): ChainedBlocks {
  const f = floatPool((24 + slot.size) * n + (9 + spanSize) * (maxSpans + 1) + 15);
  return {
    n,
    diagonal: f(6 * n),
    off: f(9 * n),
    spanCount: 0,
    last: new Int32Array(maxSpans),
    first: new Int32Array(maxSpans),
    weight: f(maxSpans),
    inner: f(6 * n),
    lowEnd: f(6 * maxSpans),
    factor: {
      block: f(slot.size * n),
      span: f(spanSize * (maxSpans + 1)),
      spanAt: new Int32Array(n),
      endingAt: new Int32Array(n),
      rhs: f(3 * n),
      lambda: f(2 * (maxSpans + 1)),
      carry: f(15),
    },
  };
}

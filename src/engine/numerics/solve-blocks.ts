import { type ChainedBlocks, slot, spanSize } from './chained-blocks.ts';

/** Solves with the factor at hand; `b` and `x` may be the same array. */
export function solveBlocks(system: ChainedBlocks, b: Float64Array, x: Float64Array): void {
  const { n, spanCount, first, factor } = system;
  const { spanAt, lambda, span } = factor;
  lambda.fill(0, 0, 2 * (spanCount + 1));
  eliminate(system, b);
  const bottom = n > 0 ? spanAt[0] : -1;
  if (bottom >= 0 && first[bottom] < 0) timesInverse(span, bottom, lambda);
  for (let i = 0; i < n; i++) substitute(system, i, x);
}

/** The eliminations of the factor on the right-hand side; λ holds the spans' sides until they are known. */
function eliminate(system: ChainedBlocks, b: Float64Array): void {
  const { block, spanAt, endingAt, rhs } = system.factor;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = system.n - 1; i >= 0; i--) {
    const at = i * slot.size;
    x += b[3 * i];
    y += b[3 * i + 1] - block[at] * x;
    z += b[3 * i + 2] - block[at + 1] * x - block[at + 2] * y;
    rhs[3 * i] = x;
    rhs[3 * i + 1] = y;
    rhs[3 * i + 2] = z;
    const p = x * block[at + 3];
    const q = y * block[at + 4];
    const r = z * block[at + 5];
    const c = at + slot.off;
    x = -(block[c] * p + block[c + 3] * q + block[c + 6] * r);
    y = -(block[c + 1] * p + block[c + 4] * q + block[c + 7] * r);
    z = -(block[c + 2] * p + block[c + 5] * q + block[c + 8] * r);
    if (spanAt[i] >= 0) takeFrom(system, spanAt[i], at + slot.inner, p, q, r);
    const ending = endingAt[i];
    if (ending < 0) continue;
    takeFrom(system, ending, at + slot.ending, p, q, r);
    const { lambda, span } = system.factor;
    const s = spanSize * ending;
    const u = span[s] * lambda[2 * ending] + span[s + 2] * lambda[2 * ending + 1];
    const v = span[s + 2] * lambda[2 * ending] + span[s + 1] * lambda[2 * ending + 1];
    x -= span[s + 3] * u + span[s + 6] * v;
    y -= span[s + 4] * u + span[s + 7] * v;
    z -= span[s + 5] * u + span[s + 8] * v;
    if (spanAt[i] < 0) continue;
    lambda[2 * spanAt[i]] -= span[s + 9] * u + span[s + 11] * v;
    lambda[2 * spanAt[i] + 1] -= span[s + 10] * u + span[s + 12] * v;
  }
}

function takeFrom(
  { factor: { block, lambda } }: ChainedBlocks,
  span: number,
  columns: number,
  p: number,
  q: number,
  r: number,
): void {
  lambda[2 * span] -= block[columns] * p + block[columns + 1] * q + block[columns + 2] * r;
  lambda[2 * span + 1] -= block[columns + 3] * p + block[columns + 4] * q + block[columns + 5] * r;
}

function timesInverse(span: Float64Array, k: number, lambda: Float64Array): void {
  const s = spanSize * k;
  const u = lambda[2 * k];
  const v = lambda[2 * k + 1];
  lambda[2 * k] = span[s] * u + span[s + 2] * v;
  lambda[2 * k + 1] = span[s + 2] * u + span[s + 1] * v;
}

/** Block i from block i - 1 and the spans it lies in. */
function substitute({ factor }: ChainedBlocks, i: number, x: Float64Array): void {
  const { block, span, spanAt, endingAt, lambda, rhs } = factor;
  const at = i * slot.size;
  const x0 = i > 0 ? x[3 * i - 3] : 0;
  const y0 = i > 0 ? x[3 * i - 2] : 0;
  const z0 = i > 0 ? x[3 * i - 1] : 0;
  const inner = spanAt[i];
  const ending = endingAt[i];
  const u = inner >= 0 ? lambda[2 * inner] : 0;
  const v = inner >= 0 ? lambda[2 * inner + 1] : 0;
  let p = rhs[3 * i];
  let q = rhs[3 * i + 1];
  let r = rhs[3 * i + 2];
  const c = at + slot.off;
  p -= block[c] * x0 + block[c + 1] * y0 + block[c + 2] * z0;
  q -= block[c + 3] * x0 + block[c + 4] * y0 + block[c + 5] * z0;
  r -= block[c + 6] * x0 + block[c + 7] * y0 + block[c + 8] * z0;
  if (inner >= 0) {
    const b = at + slot.inner;
    p -= block[b] * u + block[b + 3] * v;
    q -= block[b + 1] * u + block[b + 4] * v;
    r -= block[b + 2] * u + block[b + 5] * v;
  }
  if (ending >= 0) {
    const s = spanSize * ending;
    for (let k = 0; k < 2; k++) {
      const below = span[s + 3 + 3 * k] * x0 + span[s + 4 + 3 * k] * y0 + span[s + 5 + 3 * k] * z0;
      lambda[2 * ending + k] -= below + span[s + 9 + 2 * k] * u + span[s + 10 + 2 * k] * v;
    }
    timesInverse(span, ending, lambda);
    const m = lambda[2 * ending];
    const n = lambda[2 * ending + 1];
    const e = at + slot.ending;
    p -= block[e] * m + block[e + 3] * n;
    q -= block[e + 1] * m + block[e + 4] * n;
    r -= block[e + 2] * m + block[e + 5] * n;
  }
  const z = r * block[at + 5];
  const y = q * block[at + 4] - block[at + 2] * z;
  x[3 * i] = p * block[at + 3] - block[at] * y - block[at + 1] * z;
  x[3 * i + 1] = y;
  x[3 * i + 2] = z;
}

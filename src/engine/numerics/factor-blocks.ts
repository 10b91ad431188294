import { type ChainedBlocks, slot, spanSize } from './chained-blocks.ts';

/** Factors in place of `system.factor`; how many eigenvalues of the matrix are not positive. */
export function factorBlocks(system: ChainedBlocks): number {
  const { n, spanCount, last, first, weight, inner, lowEnd, factor } = system;
  const { block, spanAt, endingAt, carry } = factor;
  carry.fill(0);
  let negative = 0;
  let span = -1;
  for (let i = n - 1; i >= 0; i--) {
    let ending = -1;
    const at = i * slot.size;
    if (span >= 0 && first[span] === i) {
      ending = span;
      for (let k = 0; k < 6; k++) block[at + slot.ending + k] = carry[6 + k] + lowEnd[6 * span + k];
      for (let k = 0; k < 3; k++) factor.span[spanSize * span + k] = carry[12 + k];
      span = span + 1 < spanCount ? span + 1 : -1;
      if (span >= 0) beginSpan(carry, weight[span]);
    } else if (span < 0 && spanCount > 0 && last[0] === i) {
      span = 0;
      beginSpan(carry, weight[0]);
    }
    if (span >= 0) {
      for (let k = 0; k < 6; k++) block[at + slot.inner + k] = carry[6 + k] + inner[6 * i + k];
    }
    spanAt[i] = span;
    endingAt[i] = ending;
    negative += eliminateBlock(system, i, span >= 0, ending >= 0);
    if (ending >= 0) negative += eliminateSpan(system, i, ending, span >= 0);
  }
  if (span >= 0) {
    for (let k = 0; k < 3; k++) factor.span[spanSize * span + k] = carry[12 + k];
    factor.span.fill(0, spanSize * span + 3, spanSize * (span + 1));
    negative += invertPivot(factor.span, spanSize * span);
  }
  return negative - 2 * spanCount;
}

function beginSpan(carry: Float64Array, weight: number): void {
  carry.fill(0, 6, 15);
  carry[12] = -1 / weight;
  carry[13] = -1 / weight;
}

/** L D Lᵀ of the block with the fill so far, L⁻¹ of what it couples to, and the fill that goes down from it. */
function eliminateBlock(system: ChainedBlocks, i: number, hasInner: boolean, hasEnding: boolean): number {
  const { diagonal, off, factor } = system;
  const { block, carry } = factor;
  const at = i * slot.size;
  const d = 6 * i;
  const d1 = nonZero(diagonal[d] + carry[0]);
  const o1 = 1 / d1;
  const xy = diagonal[d + 3] + carry[3];
  const xz = diagonal[d + 4] + carry[4];
  const l21 = xy * o1;
  const l31 = xz * o1;
  const d2 = nonZero(diagonal[d + 1] + carry[1] - l21 * xy);
  const o2 = 1 / d2;
  const yz = diagonal[d + 5] + carry[5] - l31 * xy;
  const l32 = yz * o2;
  const d3 = nonZero(diagonal[d + 2] + carry[2] - l31 * xz - l32 * yz);
  const o3 = 1 / d3;
  block[at] = l21;
  block[at + 1] = l31;
  block[at + 2] = l32;
  block[at + 3] = o1;
  block[at + 4] = o2;
  block[at + 5] = o3;
  const o = 9 * i;
  const c = at + slot.off;
  for (let k = 0; k < 3; k++) {
    const x = off[o + k];
    const y = off[o + 3 + k] - l21 * x;
    block[c + k] = x;
    block[c + 3 + k] = y;
    block[c + 6 + k] = off[o + 6 + k] - l31 * x - l32 * y;
  }
  if (hasInner) lowerSolve(block, at, slot.inner);
  if (hasEnding) lowerSolve(block, at, slot.ending);
  fillDiagonal(block, at, carry);
  if (hasInner) fillInner(block, at, carry);
  return (d1 < 0 ? 1 : 0) + (d2 < 0 ? 1 : 0) + (d3 < 0 ? 1 : 0);
}

function nonZero(pivot: number): number {
  return pivot === 0 ? Number.MIN_VALUE * 2 ** 60 : pivot;
}

/** L⁻¹ of two columns, in place. */
function lowerSolve(block: Float64Array, at: number, columns: number): void {
  const l21 = block[at];
  const l31 = block[at + 1];
  const l32 = block[at + 2];
  for (let c = at + columns; c < at + columns + 6; c += 3) {
    const x = block[c];
    const y = block[c + 1] - l21 * x;
    block[c + 1] = y;
    block[c + 2] -= l31 * x + l32 * y;
  }
}

function fillDiagonal(block: Float64Array, at: number, carry: Float64Array): void {
  const o1 = block[at + 3];
  const o2 = block[at + 4];
  const o3 = block[at + 5];
  const c = at + slot.off;
  const x1 = block[c];
  const x2 = block[c + 1];
  const x3 = block[c + 2];
  const y1 = block[c + 3];
  const y2 = block[c + 4];
  const y3 = block[c + 5];
  const z1 = block[c + 6];
  const z2 = block[c + 7];
  const z3 = block[c + 8];
  carry[0] = -(x1 * x1 * o1 + y1 * y1 * o2 + z1 * z1 * o3);
  carry[1] = -(x2 * x2 * o1 + y2 * y2 * o2 + z2 * z2 * o3);
  carry[2] = -(x3 * x3 * o1 + y3 * y3 * o2 + z3 * z3 * o3);
  carry[3] = -(x1 * x2 * o1 + y1 * y2 * o2 + z1 * z2 * o3);
  carry[4] = -(x1 * x3 * o1 + y1 * y3 * o2 + z1 * z3 * o3);
  carry[5] = -(x2 * x3 * o1 + y2 * y3 * o2 + z2 * z3 * o3);
}

function fillInner(block: Float64Array, at: number, carry: Float64Array): void {
  const o1 = block[at + 3];
  const o2 = block[at + 4];
  const o3 = block[at + 5];
  const b = at + slot.inner;
  const c = at + slot.off;
  carry[12] -= block[b] ** 2 * o1 + block[b + 1] ** 2 * o2 + block[b + 2] ** 2 * o3;
  carry[13] -= block[b + 3] ** 2 * o1 + block[b + 4] ** 2 * o2 + block[b + 5] ** 2 * o3;
  carry[14] -=
    block[b] * block[b + 3] * o1 + block[b + 1] * block[b + 4] * o2 + block[b + 2] * block[b + 5] * o3;
  for (let column = 0; column < 2; column++) {
    const p = block[b + 3 * column] * o1;
    const q = block[b + 3 * column + 1] * o2;
    const r = block[b + 3 * column + 2] * o3;
    for (let k = 0; k < 3; k++) {
      carry[6 + 3 * column + k] = -(block[c + k] * p + block[c + 3 + k] * q + block[c + 6 + k] * r);
    }
  }
}

/** λ of the span that ends at block i: it touches block i - 1 by fill, and the next span's λ. */
function eliminateSpan(system: ChainedBlocks, i: number, ending: number, hasNext: boolean): number {
  const { block, span, carry } = system.factor;
  const at = i * slot.size;
  const s = spanSize * ending;
  const e = at + slot.ending;
  const over = [block[at + 3], block[at + 4], block[at + 5]];
  const dot = (a: number, aStep: number, b: number, bStep: number) =>
    block[a] * block[b] * over[0] +
    block[a + aStep] * block[b + bStep] * over[1] +
    block[a + 2 * aStep] * block[b + 2 * bStep] * over[2];
  span[s] -= dot(e, 1, e, 1);
  span[s + 1] -= dot(e + 3, 1, e + 3, 1);
  span[s + 2] -= dot(e, 1, e + 3, 1);
  const negative = invertPivot(span, s);
  for (let column = 0; column < 2; column++) {
    for (let k = 0; k < 3; k++) {
      span[s + 3 + 3 * column + k] = -dot(e + 3 * column, 1, at + slot.off + k, 3);
    }
    for (let next = 0; next < 2; next++) {
      span[s + 9 + 2 * column + next] = hasNext ? -dot(e + 3 * column, 1, at + slot.inner + 3 * next, 1) : 0;
    }
  }
  fillFromSpan(span, s, carry);
  return negative;
}

/** Adds -Uᵀ P⁻¹ U to the fill, U the span's coupling to (block below, next span). */
function fillFromSpan(span: Float64Array, s: number, carry: Float64Array): void {
  const xx = span[s];
  const yy = span[s + 1];
  const xy = span[s + 2];
  const u = (row: number, column: number) =>
    column < 3 ? span[s + 3 + 3 * row + column] : span[s + 9 + 2 * row + column - 3];
  const product = (a: number, b: number) =>
    u(0, a) * (xx * u(0, b) + xy * u(1, b)) + u(1, a) * (xy * u(0, b) + yy * u(1, b));
  const pairs = [[0, 0], [1, 1], [2, 2], [0, 1], [0, 2], [1, 2]]; // biome-ignore format: one row
  pairs.forEach(([a, b], k) => {
    carry[k] -= product(a, b);
  });
  for (let k = 0; k < 3; k++) {
    carry[6 + k] -= product(k, 3);
    carry[9 + k] -= product(k, 4);
  }
  carry[12] -= product(3, 3);
  carry[13] -= product(4, 4);
  carry[14] -= product(3, 4);
}

/** The symmetric 2 × 2 at `s` (xx, yy, xy) replaced by its inverse; its negative eigenvalues. */
function invertPivot(span: Float64Array, s: number): number {
  const xx = span[s];
  const yy = span[s + 1];
  const xy = span[s + 2];
  const determinant = nonZero(xx * yy - xy * xy);
  span[s] = yy / determinant;
  span[s + 1] = xx / determinant;
  span[s + 2] = -xy / determinant;
  return determinant < 0 ? 1 : xx + yy < 0 ? 2 : 0;
}

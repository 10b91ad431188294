/**
 * Bending and twisting of one element: ½ Σ K_i (φ_i - φ0_i)², φ the rotation vector of the turn from its butt end's
 * frame to its tip end's, in the blank's own axes. With q = (c, s) that turn's quaternion, φ = g(|s|²) s, and for
 * turns w_a, w_b of the two frames, w their mean and δ their difference, exactly
 *   dφ = (½gc I + g'c s sᵀ) δ + φ × w
 *   d²s = w × (w × s) - ½c w × δ - ¼ (s·δ) δ,   dσ = c s·δ,   d²σ = ½c²|δ|² - ½(s·δ)² - c w·(s × δ).
 */
import type { SpaceMesh } from './mesh-in-space.ts';
import type { SpaceState } from './state.ts';

/** φ 3, moment 3, c, s 3, g, g', g'': of the element last read. */
export type ElementTurn = Float64Array;

export function elementTurn(mesh: SpaceMesh, q: Float64Array, e: number, to: ElementTurn): void {
  const at = 4 * e;
  const a0 = q[at - 4];
  const a1 = q[at - 3];
  const a2 = q[at - 2];
  const a3 = q[at - 1];
  const b0 = q[at];
  const b1 = q[at + 1];
  const b2 = q[at + 2];
  const b3 = q[at + 3];
  const s1 = a0 * b1 - a1 * b0 - a2 * b3 + a3 * b2;
  const s2 = a0 * b2 + a1 * b3 - a2 * b0 - a3 * b1;
  const s3 = a0 * b3 - a1 * b2 + a2 * b1 - a3 * b0;
  to[6] = a0 * b0 + a1 * b1 + a2 * b2 + a3 * b3;
  to[7] = s1;
  to[8] = s2;
  to[9] = s3;
  angleOfSine(s1 * s1 + s2 * s2 + s3 * s3, to);
  const g = to[10];
  to[0] = g * s1;
  to[1] = g * s2;
  to[2] = g * s3;
  to[3] = mesh.springNm[e] * (to[0] + mesh.restSideTurn[e]);
  to[4] = mesh.springNm[e] * (to[1] - mesh.restTurn[e]);
  to[5] = mesh.twistSpringNm[e] * to[2];
}

/** g = 2 asin(√σ)/√σ with its first two derivatives. */
function angleOfSine(sigma: number, to: ElementTurn): void {
  if (sigma < 1e-2) {
    const x = sigma;
    to[10] = 2 + x * (1 / 3 + x * (3 / 20 + x * (5 / 56 + x * (35 / 576 + (x * 63) / 1408))));
    to[11] = 1 / 3 + x * (3 / 10 + x * (15 / 56 + x * (35 / 144 + (x * 315) / 1408)));
    to[12] = 3 / 10 + x * (15 / 28 + x * (35 / 48 + (x * 315) / 352));
    return;
  }
  const x = Math.min(sigma, 1 - 1e-12);
  const root = Math.sqrt(x);
  const rest = Math.sqrt(1 - x);
  const g = (2 * Math.asin(root)) / root;
  const first = 1 / (x * rest) - g / (2 * x);
  to[10] = g;
  to[11] = first;
  to[12] = -1 / (x * x * rest) + 1 / (2 * x * rest ** 3) - first / (2 * x) + g / (2 * x * x);
}

export function strainEnergy(mesh: SpaceMesh, e: number, turn: ElementTurn): number {
  return 0.5 * ((turn[3] ** 2 + turn[4] ** 2) / mesh.springNm[e] + turn[5] ** 2 / mesh.twistSpringNm[e]);
}

/** Adds the element's gradient; node 0's goes to `clampGradient`. */
export function addStrainGradient(e: number, turn: ElementTurn, state: SpaceState): void {
  const m1 = turn[3];
  const m2 = turn[4];
  const m3 = turn[5];
  const c = turn[6];
  const s1 = turn[7];
  const s2 = turn[8];
  const s3 = turn[9];
  const g = turn[10];
  const first = turn[11];
  const alpha = 0.5 * g * c;
  const along = first * c * (s1 * m1 + s2 * m2 + s3 * m3);
  const half = 0.5 * g;
  const x = half * (m2 * s3 - m3 * s2);
  const y = half * (m3 * s1 - m1 * s3);
  const z = half * (m1 * s2 - m2 * s1);
  const u = alpha * m1 + along * s1;
  const v = alpha * m2 + along * s2;
  const w = alpha * m3 + along * s3;
  const gradient = state.bendGradient;
  const b = 3 * e - 3;
  gradient[b] += x + u;
  gradient[b + 1] += y + v;
  gradient[b + 2] += z + w;
  const to = e > 1 ? gradient : state.clampGradient;
  const a = e > 1 ? b - 3 : 0;
  to[a] += x - u;
  to[a + 1] += y - v;
  to[a + 2] += z - w;
}

/** Second derivatives of the element last read: ¼W + D, ¼W - D, the even part of C and the axis of its odd part. */
const parts = new Float64Array(21);

/** D of δδ, W of ww and C of 2 wᵀCδ. */
function secondDerivatives(mesh: SpaceMesh, e: number, turn: ElementTurn): void {
  const p1 = turn[0];
  const p2 = turn[1];
  const p3 = turn[2];
  const m1 = turn[3];
  const m2 = turn[4];
  const m3 = turn[5];
  const c = turn[6];
  const s1 = turn[7];
  const s2 = turn[8];
  const s3 = turn[9];
  const g = turn[10];
  const first = turn[11];
  const second = turn[12];
  const k = mesh.springNm[e];
  const dk = mesh.twistSpringNm[e] - k;
  const sigma = s1 * s1 + s2 * s2 + s3 * s3;
  const sm = s1 * m1 + s2 * m2 + s3 * m3;
  const alpha = 0.5 * g * c;
  const beta = first * c;
  const a1 = beta * s1 * s3;
  const a2 = beta * s2 * s3;
  const a3 = alpha + beta * s3 * s3;
  // D = d I + ss (s sᵀ) + dk a aᵀ + sm-mixed
  const d = k * alpha * alpha + 0.5 * sm * first * c * c;
  const ss = k * beta * (2 * alpha + beta * sigma) + sm * (second * c * c - 0.5 * first);
  const mix = 0.5 * (beta * c - 0.25 * g);
  const dxx = d + ss * s1 * s1 + dk * a1 * a1 + 2 * mix * s1 * m1;
  const dyy = d + ss * s2 * s2 + dk * a2 * a2 + 2 * mix * s2 * m2;
  const dzz = d + ss * s3 * s3 + dk * a3 * a3 + 2 * mix * s3 * m3;
  const dxy = ss * s1 * s2 + dk * a1 * a2 + mix * (s1 * m2 + s2 * m1);
  const dxz = ss * s1 * s3 + dk * a1 * a3 + mix * (s1 * m3 + s3 * m1);
  const dyz = ss * s2 * s3 + dk * a2 * a3 + mix * (s2 * m3 + s3 * m2);
  // W / 4
  const w = 0.25 * (k * (p1 * p1 + p2 * p2 + p3 * p3) - (m1 * p1 + m2 * p2 + m3 * p3));
  const q = 0.25 * k;
  put(0, dxx, w + q * -p1 * p1 + 0.25 * (dk * p2 * p2 + m1 * p1));
  put(1, dyy, w + q * -p2 * p2 + 0.25 * (dk * p1 * p1 + m2 * p2));
  put(2, dzz, w + q * -p3 * p3 + 0.25 * m3 * p3);
  put(3, dxy, -q * p1 * p2 - 0.25 * dk * p1 * p2 + 0.125 * (m1 * p2 + m2 * p1));
  put(4, dxz, -q * p1 * p3 + 0.125 * (m1 * p3 + m3 * p1));
  put(5, dyz, -q * p2 * p3 + 0.125 * (m2 * p3 + m3 * p2));
  // C = [v] + (−p2, p1, 0)·dk aᵀ + β (m × s) sᵀ
  const n1 = beta * (m2 * s3 - m3 * s2);
  const n2 = beta * (m3 * s1 - m1 * s3);
  const n3 = beta * (m1 * s2 - m2 * s1);
  const r1 = -dk * p2;
  const r2 = dk * p1;
  parts[12] = r1 * a1 + n1 * s1;
  parts[13] = r2 * a2 + n2 * s2;
  parts[14] = n3 * s3;
  parts[15] = 0.5 * (r1 * a2 + r2 * a1 + n1 * s2 + n2 * s1);
  parts[16] = 0.5 * (r1 * a3 + n1 * s3 + n3 * s1);
  parts[17] = 0.5 * (r2 * a3 + n2 * s3 + n3 * s2);
  const t = 0.5 * beta * sm;
  parts[18] = alpha * (0.5 * m1 - k * p1) - t * s1 - 0.5 * (r2 * a3 + n2 * s3 - n3 * s2);
  parts[19] = alpha * (0.5 * m2 - k * p2) - t * s2 + 0.5 * (r1 * a3 + n1 * s3 - n3 * s1);
  parts[20] = alpha * (0.5 * m3 - k * p3) - t * s3 - 0.5 * (r1 * a2 - r2 * a1 + n1 * s2 - n2 * s1);
}

function put(at: number, d: number, quarterW: number): void {
  parts[at] = quarterW + d;
  parts[6 + at] = quarterW - d;
}

/** Adds the element's second derivatives, sent back from mean and difference to its two ends. */
export function addStrainHessian(mesh: SpaceMesh, e: number, turn: ElementTurn, state: SpaceState): void {
  secondDerivatives(mesh, e, turn);
  const { diagonal, off } = state.hessian;
  const d = 6 * e - 6;
  for (let k = 0; k < 6; k++) diagonal[d + k] += parts[k] + parts[12 + k];
  if (e === 1) return;
  for (let k = 0; k < 6; k++) diagonal[d - 6 + k] += parts[k] - parts[12 + k];
  const x = parts[18];
  const y = parts[19];
  const z = parts[20];
  const o = 9 * e - 9;
  off[o] += parts[6];
  off[o + 1] += parts[9] + z;
  off[o + 2] += parts[10] - y;
  off[o + 3] += parts[9] - z;
  off[o + 4] += parts[7];
  off[o + 5] += parts[11] + x;
  off[o + 6] += parts[10] + y;
  off[o + 7] += parts[11] - x;
  off[o + 8] += parts[8];
}

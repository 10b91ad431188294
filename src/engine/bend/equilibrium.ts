/**
 * Energy of the loaded rod and its derivatives.
 *
 *   E(θ) = Σ_e ½ K_e (θ_e - θ_{e-1} - restTurn_e)²                      bending
 *        + λ [ Σ_j m_j g y_j  +  Σ_k T_k ℓ_k  -  T ê·r_ring0  -  F·r_tip ]  weights, line, far pull, dead tip force
 *
 * Planar, inextensible, geometrically exact; unknowns are the node angles θ_1..θ_n (θ_0 is the clamp's).
 * Node places follow from the angles: r_e = r_{e-1} + h_e (cos, sin)((θ_{e-1} + θ_e)/2). A ring's centre stands
 * off its node by `ringOffsetM` along the left normal (-sin θ, cos θ), so it turns with the blank. ℓ_k is the
 * distance between ring k and ring k + 1, the last one to the reel; T_k its tension.
 *
 * Because ℓ_k depends only on the angles inside span k, the Hessian is tridiagonal plus one local rank-one
 * term T_k/ℓ_k a_k a_kᵀ per span (see numerics/chained-tridiagonal.ts): every Newton step is O(n).
 */
import { type ChainedTridiagonal, chainedTridiagonal } from '../numerics/chained-tridiagonal.ts';
import { floatPool } from '../numerics/float-pool.ts';
import { standardGravity } from '../units/gravity.ts';
import type { Mesh } from './mesh.ts';

export interface LineThroughRings {
  /** Per ring, tip-top first: signed distance of the ring's centre from the axis along the left normal. */
  readonly ringOffsetM: Float64Array;
  readonly reelXM: number;
  readonly reelYM: number;
  /** Per span, span k between ring k and ring k + 1, the last one to the reel. */
  readonly spanTensionN: Float64Array;
  readonly pullN: number;
  readonly pullAngleRad: number;
}

export interface Loading {
  readonly line: LineThroughRings | undefined;
  readonly tipXN: number;
  readonly tipYN: number;
}

/** Everything the solver writes; made once per mesh shape and reused. */
export interface Workspace {
  readonly theta: Float64Array;
  readonly xM: Float64Array;
  readonly yM: Float64Array;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  readonly ringXM: Float64Array;
  readonly ringYM: Float64Array;
  readonly spanLengthM: Float64Array;
  readonly spanUx: Float64Array;
  readonly spanUy: Float64Array;
  readonly ringFx: Float64Array;
  readonly ringFy: Float64Array;
  readonly ringMoment: Float64Array;
  readonly ringStiffening: Float64Array;
  /** Ring that stands on each node, or -1. */
  readonly ringAtNode: Int32Array;
  /** Derivative of the bending and of the full-load energy by each free angle. */
  readonly bendGradient: Float64Array;
  readonly loadGradient: Float64Array;
  readonly hessian: ChainedTridiagonal;
}

export function makeWorkspace(mesh: Mesh): Workspace {
  const f = floatPool(10 * (mesh.count + 1) + 12 * (mesh.ringNode.length + 1));
  const nodes = mesh.count + 1;
  const rings = mesh.ringNode.length;
  const ringAtNode = new Int32Array(nodes).fill(-1);
  mesh.ringNode.forEach((node, k) => {
    ringAtNode[node] = k;
  });
  return {
    theta: f(nodes),
    xM: f(nodes),
    yM: f(nodes),
    cos: f(nodes),
    sin: f(nodes),
    ringXM: f(rings),
    ringYM: f(rings),
    spanLengthM: f(rings),
    spanUx: f(rings),
    spanUy: f(rings),
    ringFx: f(rings),
    ringFy: f(rings),
    ringMoment: f(rings),
    ringStiffening: f(rings),
    ringAtNode,
    bendGradient: f(mesh.count),
    loadGradient: f(mesh.count),
    hessian: chainedTridiagonal(mesh.count, Math.max(1, rings)),
  };
}

/** Places of nodes, rings and spans for the angles in `work.theta`. */
export function placeNodes(mesh: Mesh, line: LineThroughRings | undefined, work: Workspace): void {
  const { theta, xM, yM, cos, sin } = work;
  const { count, lengthM } = mesh;
  xM[0] = 0;
  yM[0] = 0;
  for (let e = 1; e <= count; e++) {
    const angle = 0.5 * (theta[e - 1] + theta[e]);
    cos[e] = Math.cos(angle);
    sin[e] = Math.sin(angle);
    xM[e] = xM[e - 1] + lengthM[e] * cos[e];
    yM[e] = yM[e - 1] + lengthM[e] * sin[e];
  }
  if (line) placeRings(mesh, line, work);
}

function placeRings(mesh: Mesh, line: LineThroughRings, work: Workspace): void {
  const { theta, xM, yM, ringXM, ringYM, spanLengthM, spanUx, spanUy } = work;
  const rings = mesh.ringNode.length;
  for (let k = 0; k < rings; k++) {
    const node = mesh.ringNode[k];
    ringXM[k] = xM[node] - line.ringOffsetM[k] * Math.sin(theta[node]);
    ringYM[k] = yM[node] + line.ringOffsetM[k] * Math.cos(theta[node]);
  }
  for (let k = 0; k < rings; k++) {
    const dx = ringXM[k] - (k + 1 < rings ? ringXM[k + 1] : line.reelXM);
    const dy = ringYM[k] - (k + 1 < rings ? ringYM[k + 1] : line.reelYM);
    const length = Math.max(Math.sqrt(dx * dx + dy * dy), 1e-12);
    spanLengthM[k] = length;
    spanUx[k] = dx / length;
    spanUy[k] = dy / length;
  }
}

export function energyAt(mesh: Mesh, loading: Loading, factor: number, work: Workspace): number {
  const { theta, xM, yM } = work;
  let bending = 0;
  let load = 0;
  for (let e = 1; e <= mesh.count; e++) {
    const turn = theta[e] - theta[e - 1] - mesh.restTurn[e];
    bending += 0.5 * mesh.springNm[e] * turn * turn;
    load += mesh.massKg[e] * standardGravity * yM[e];
  }
  load -= loading.tipXN * xM[mesh.count] + loading.tipYN * yM[mesh.count];
  const { line } = loading;
  if (line) {
    for (let k = 0; k < work.spanLengthM.length; k++) load += line.spanTensionN[k] * work.spanLengthM[k];
    load -=
      line.pullN *
      (Math.cos(line.pullAngleRad) * work.ringXM[0] + Math.sin(line.pullAngleRad) * work.ringYM[0]);
  }
  return bending + factor * load;
}

/** Gradient and Hessian at `factor` times the load; `placeNodes` must have run for the present angles. */
export function assemble(mesh: Mesh, loading: Loading, factor: number, work: Workspace): void {
  const { theta, cos, sin, ringAtNode, ringFx, ringFy, ringMoment, ringStiffening } = work;
  const { bendGradient, loadGradient, hessian } = work;
  const { diagonal, off } = hessian;
  const { massKg, lengthM, springNm, restTurn } = mesh;
  const n = mesh.count;
  if (loading.line) forcesOnRings(mesh, loading.line, work);
  const quarter = 0.25 * factor;

  // from the tip inward: n is the full load carried across element e
  let nx = loading.tipXN;
  let ny = loading.tipYN;
  let momentAbove = 0;
  let springAbove = 0;
  let turningAbove = 0;
  let pullAbove = 0;
  for (let e = n; e >= 1; e--) {
    ny -= massKg[e] * standardGravity;
    const ring = loading.line ? ringAtNode[e] : -1;
    if (ring >= 0) {
      nx += ringFx[ring];
      ny += ringFy[ring];
    }
    const h = lengthM[e];
    const spring = springNm[e];
    const moment = spring * (theta[e] - theta[e - 1] - restTurn[e]);
    const turning = h * (cos[e] * ny - sin[e] * nx);
    const pull = h * (cos[e] * nx + sin[e] * ny);
    const i = e - 1;
    bendGradient[i] = moment - momentAbove;
    loadGradient[i] = -0.5 * (turning + turningAbove);
    diagonal[i] = spring + springAbove + quarter * (pull + pullAbove);
    off[i] = quarter * pull - spring;
    if (ring >= 0) {
      loadGradient[i] -= ringMoment[ring];
      diagonal[i] += factor * ringStiffening[ring];
    }
    momentAbove = moment;
    springAbove = spring;
    turningAbove = turning;
    pullAbove = pull;
  }
  hessian.spanCount = 0;
  if (loading.line) addLineStiffness(mesh, loading.line, factor, work);
}

function forcesOnRings(mesh: Mesh, line: LineThroughRings, work: Workspace): void {
  const { theta, spanUx, spanUy, ringFx, ringFy, ringMoment, ringStiffening } = work;
  let tensionAhead = line.pullN;
  let ux = Math.cos(line.pullAngleRad);
  let uy = Math.sin(line.pullAngleRad);
  for (let k = 0; k < mesh.ringNode.length; k++) {
    const tension = line.spanTensionN[k];
    const fx = tensionAhead * ux - tension * spanUx[k];
    const fy = tensionAhead * uy - tension * spanUy[k];
    const angle = theta[mesh.ringNode[k]];
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    ringFx[k] = fx;
    ringFy[k] = fy;
    ringMoment[k] = -line.ringOffsetM[k] * (fx * c + fy * s);
    ringStiffening[k] = line.ringOffsetM[k] * (fy * c - fx * s);
    tensionAhead = tension;
    ux = spanUx[k];
    uy = spanUy[k];
  }
}

/** The rank-one terms T_k/ℓ_k a_k a_kᵀ, a_k the change of the span's vector across its own direction. */
function addLineStiffness(mesh: Mesh, line: LineThroughRings, factor: number, work: Workspace): void {
  const { theta, cos, sin, spanUx, spanUy, spanLengthM, hessian } = work;
  const { inner } = hessian;
  const { lengthM } = mesh;
  const rings = mesh.ringNode.length;
  for (let k = 0; k < rings; k++) {
    const weight = (factor * line.spanTensionN[k]) / spanLengthM[k];
    const high = mesh.ringNode[k];
    if (!(weight > 0) || high === 0) break;
    const low = k + 1 < rings ? mesh.ringNode[k + 1] : 0;
    const vx = -spanUy[k];
    const vy = spanUx[k];
    const span = hessian.spanCount++;
    hessian.weight[span] = weight;
    hessian.last[span] = high - 1;
    hessian.first[span] = low - 1;
    let above = -line.ringOffsetM[k] * (vx * Math.cos(theta[high]) + vy * Math.sin(theta[high]));
    for (let e = high; e > low; e--) {
      const half = 0.5 * lengthM[e] * (vy * cos[e] - vx * sin[e]);
      inner[e - 1] = above + half;
      above = half;
    }
    if (k + 1 < rings && low > 0) {
      const turn = line.ringOffsetM[k + 1] * (vx * Math.cos(theta[low]) + vy * Math.sin(theta[low]));
      hessian.lowEnd[span] = above + turn;
    }
  }
}

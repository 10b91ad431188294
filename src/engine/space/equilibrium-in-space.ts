/**
 * Energy of the loaded rod in space and its derivatives:
 *
 *   E = Σ_e ½ Σ_i K_i (φ_i - φ0_i)²  +  λ [ Σ_j m_j g y_j + T Σ_k ℓ_k - T ê·r_ring0 - F·r_tip ]
 *
 * by small turns of every node in the blank's own axes (strain.ts has the first sum). ℓ_k depends only on the turns
 * inside span k: block tridiagonal plus two columns per span, so a Newton step is O(n) (numerics/chained-blocks.ts).
 */
import { standardGravity } from '../units/gravity.ts';
import { addCarried, addCarriedGradient } from './carried.ts';
import { addLineStiffness } from './line-stiffness.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import type { SpaceLine, SpaceLoading, SpaceState } from './state.ts';
import { addStrainGradient, addStrainHessian, elementTurn, strainEnergy } from './strain.ts';

const turn = new Float64Array(13);

export function energyInSpace(
  mesh: SpaceMesh,
  { line, tipN }: SpaceLoading,
  factor: number,
  state: SpaceState,
): number {
  const { place, ring, spanLengthM } = state;
  let bending = 0;
  let load = 0;
  for (let e = 1; e <= mesh.count; e++) {
    elementTurn(mesh, state.q, e, turn);
    bending += strainEnergy(mesh, e, turn);
    load += mesh.massKg[e] * standardGravity * place[3 * e + 1];
  }
  for (let i = 0; i < 3; i++) load -= tipN[i] * place[3 * mesh.count + i];
  if (line) {
    for (let k = 0; k < spanLengthM.length; k++) load += line.spanTensionN[k] * spanLengthM[k];
    for (let i = 0; i < 3; i++) load -= line.pullN * line.pull[i] * ring[i];
  }
  return bending + factor * load;
}

/** Gradient, and the Hessian unless `gradientOnly`; `placeState` must have run for the present turns. */
export function assembleInSpace(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  factor: number,
  state: SpaceState,
  gradientOnly = false,
): void {
  const { hessian, ringAtNode, ringForce } = state;
  const { line } = loading;
  state.bendGradient.fill(0);
  state.loadGradient.fill(0);
  state.clampGradient.fill(0);
  if (!gradientOnly) {
    hessian.diagonal.fill(0);
    hessian.off.fill(0);
    hessian.spanCount = 0;
  }
  if (line) forcesOnRings(mesh, line, state);
  let [x, y, z] = loading.tipN;
  for (let e = mesh.count; e >= 1; e--) {
    y -= mesh.massKg[e] * standardGravity;
    const ring = line ? ringAtNode[e] : -1;
    if (ring >= 0) {
      x += ringForce[3 * ring];
      y += ringForce[3 * ring + 1];
      z += ringForce[3 * ring + 2];
      addRing(e, ring, line!, factor, state, gradientOnly);
    }
    elementTurn(mesh, state.q, e, turn);
    addStrainGradient(e, turn, state);
    if (gradientOnly) addCarriedGradient(e, x, y, z, mesh, state);
    else {
      addStrainHessian(mesh, e, turn, state);
      addCarried(e, x, y, z, mesh.lengthM[e], factor, state);
    }
  }
  if (line && !gradientOnly) addLineStiffness(mesh, line, factor, state);
}

function forcesOnRings(mesh: SpaceMesh, line: SpaceLine, { span, ringForce }: SpaceState): void {
  for (let i = 0; i < 3; i++) {
    let ahead = line.pullN * line.pull[i];
    for (let k = 0; k < mesh.ringNode.length; k++) {
      const behind = line.spanTensionN[k] * span[3 * k + i];
      ringForce[3 * k + i] = ahead - behind;
      ahead = behind;
    }
  }
}

/** A ring's force turns its node by its stand-off a: -a × F in the node's axes, and what that changes by. */
function addRing(
  e: number,
  ring: number,
  { ringOffsetM }: SpaceLine,
  factor: number,
  { frame, ringForce, loadGradient, hessian }: SpaceState,
  gradientOnly: boolean,
): void {
  const f = 9 * e;
  const x = ringForce[3 * ring];
  const y = ringForce[3 * ring + 1];
  const z = ringForce[3 * ring + 2];
  const f1 = x * frame[f] + y * frame[f + 1] + z * frame[f + 2];
  const f2 = x * frame[f + 3] + y * frame[f + 4] + z * frame[f + 5];
  const f3 = x * frame[f + 6] + y * frame[f + 7] + z * frame[f + 8];
  const a1 = ringOffsetM[2 * ring];
  const a2 = ringOffsetM[2 * ring + 1];
  const i = 3 * e - 3;
  loadGradient[i] -= a2 * f3;
  loadGradient[i + 1] += a1 * f3;
  loadGradient[i + 2] -= a1 * f2 - a2 * f1;
  if (gradientOnly) return;
  const { diagonal } = hessian;
  const d = 6 * e - 6;
  diagonal[d] += factor * a2 * f2;
  diagonal[d + 1] += factor * a1 * f1;
  diagonal[d + 2] += factor * (a1 * f1 + a2 * f2);
  diagonal[d + 3] -= 0.5 * factor * (a1 * f2 + a2 * f1);
  diagonal[d + 4] -= 0.5 * factor * a1 * f3;
  diagonal[d + 5] -= 0.5 * factor * a2 * f3;
}

/**
 * How a drop answers to every unknown, by the adjoint: with H the Hessian of the energy at equilibrium and
 * c = ∂drop/∂θ, solve H λ = c once per reading; then
 *   ∂drop/∂ ln K_e    = -K_e (λ_e - λ_{e-1}) turn_e            bending spring of element e
 *   ∂drop/∂ restTurn_e = K_e (λ_e - λ_{e-1})
 *   ∂drop/∂ m_j       = -g δy_j                                δy_j the height node j gains when θ turns by λ
 *   ∂drop/∂ θ_0       = c_0 - λ·∂²E/∂θ∂θ_0             λ_1 alone without a line; with one the reel turns along
 */
import type { Workspace } from '../bend/equilibrium.ts';
import { solveChained } from '../numerics/chained-tridiagonal.ts';
import { standardGravity } from '../units/gravity.ts';
import type { ClampModel, ReadingPlace, TestModel } from './clamp-elements.ts';
import { addBlend } from './rows.ts';
import type { Unknowns } from './unknowns.ts';

/** Where predictions and derivatives of the drops go; one row of `jacobian` per reading. */
export interface Prediction {
  value: Float64Array;
  /** Row by row, `size` columns. */
  jacobian: Float64Array;
  size: number;
  /** ∂drop/∂station, towards the butt. */
  stationSlope: Float64Array;
  /** ∂drop/∂(everything hung in its test, as a factor). */
  loadSlope: Float64Array;
}

/** The blank's angle at a distance from the element's clamp-side node. */
export function angleIn(model: ClampModel, { theta }: Workspace, element: number, along: number): number {
  return theta[element - 1] + ((theta[element] - theta[element - 1]) * along) / model.lengthM[element];
}

export function deriveDrop(
  model: ClampModel,
  test: TestModel,
  place: ReadingPlace,
  unknowns: Unknowns,
  row: number,
  out: Prediction,
): void {
  const { mesh, work, hung } = test;
  const { lambda, heightGain } = model;
  const { element, along, squareToRad: nominal } = place;

  // c = ∂drop/∂θ, node 0 apart
  lambda.fill(0);
  let atClamp = 0;
  const turnNode = (node: number, amount: number) => {
    if (node === 0) atClamp += amount;
    else lambda[node - 1] += amount;
  };
  for (let e = 1; e < element; e++) {
    const half = -0.5 * model.lengthM[e] * cosTo(work, e, nominal);
    turnNode(e - 1, half);
    turnNode(e, half);
  }
  const share = along / (2 * model.lengthM[element]);
  const partial = -along * Math.cos(angleIn(model, work, element, 0.5 * along) - nominal);
  turnNode(element - 1, (1 - share) * partial);
  turnNode(element, share * partial);

  // λ_1..λ_count stand at 0..count-1; the clamp does not turn
  solveChained(work.hessian, lambda, lambda);
  let gain = 0;
  let below = 0;
  for (let e = 1; e <= mesh.count; e++) {
    gain += 0.5 * mesh.lengthM[e] * work.cos[e] * (below + lambda[e - 1]);
    heightGain[e] = gain;
    below = lambda[e - 1];
  }

  addRowDerivatives(model, test, unknowns, row * out.size, out.jacobian);
  out.jacobian[row * out.size + unknowns.tilt.start + model.index] += atClamp - alongButt(test, lambda);
  out.stationSlope[row] = Math.sin(angleIn(model, work, element, along) - nominal);
  out.loadSlope[row] = 0;
  for (const { node, share: s, massKg } of hung) {
    const height = s * heightGain[node] + (1 - s) * heightGain[node - 1];
    out.loadSlope[row] -= massKg * standardGravity * height;
  }
}

function alongButt({ byButt, work }: TestModel, lambda: Float64Array): number {
  if (!byButt) return lambda[0] * work.hessian.off[0];
  return byButt.reduce((sum, value, i) => sum + value * lambda[i], 0);
}

/** cos of element e's angle less the nominal one, from the cosines at hand. */
function cosTo(work: Workspace, e: number, nominal: number): number {
  return work.cos[e] * Math.cos(nominal) + work.sin[e] * Math.sin(nominal);
}

function addRowDerivatives(
  model: ClampModel,
  { work }: TestModel,
  unknowns: Unknowns,
  at: number,
  jacobian: Float64Array,
): void {
  const { stiffness, rest, restAcross, mass } = unknowns;
  const { lambda, heightGain, springNm, springParts, massParts, restTurn, lengthM } = model;
  const { theta } = work;
  const turned = model.setup.turnedRad ?? 0;
  const inPlane = Math.cos(turned);
  const across = Math.sin(turned);
  let below = 0;
  for (let e = 1; e <= model.count; e++) {
    const coarse = model.coarse[e];
    const bend = lambda[e - 1] - below;
    below = lambda[e - 1];

    const bySpring = -bend * (theta[e] - theta[e - 1] - restTurn[e]);
    const s = at + stiffness.start + model.fine[e].row;
    jacobian[s] += bySpring * springParts.low[e];
    jacobian[s + 1] += bySpring * springParts.high[e];

    const byKg = -standardGravity * 0.5 * (heightGain[e] + heightGain[e - 1]);
    const m = at + mass.start + coarse.row;
    jacobian[m] += byKg * massParts.low[e];
    jacobian[m + 1] += byKg * massParts.high[e];

    const byCurvature = springNm[e] * bend * lengthM[e];
    if (rest.size > 0) addBlend(jacobian, at + rest.start, coarse, byCurvature * inPlane);
    if (restAcross.size > 0) addBlend(jacobian, at + restAcross.start, coarse, byCurvature * across);
  }
}

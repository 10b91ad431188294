/**
 * A bent blank by going round statics and geometry until they agree, which shares nothing with the fit's minimum of
 * energy nor with the shooting of simulated-bench.ts:
 *
 *   M(s) = Σ weight beyond s · its horizontal distance,   θ(s) = θ_clamp + ∫ (κ₀ - M / EI) ds from the clamp outwards.
 *
 * EI may jump from cell to cell. A clamp that gives turns down by its compliance times the moment it carries.
 */
import type { Curve, TrueBlank } from './simulated-bench.ts';

export interface GivingLoad {
  /** Where the axis points before the clamp gives. */
  buttAngleRad: number;
  clampFromTipM: number;
  hung: readonly { fromTipM: number; massKg: number }[];
  /** How far a newton metre turns the clamp [rad]. */
  givesRadPerNm: number;
}

const gravity = 9.80665;
const cells = 800;

export function bentByPicard(blank: TrueBlank, load: GivingLoad): Curve {
  const h = load.clampFromTipM / cells;
  // cell k lies between k h and (k + 1) h from the clamp
  const middle = Float64Array.from({ length: cells }, (_, k) => load.clampFromTipM - (k + 0.5) * h);
  const compliance = middle.map((at) => 1 / blank.stiffnessNm2(at));
  const rest = middle.map((at) => blank.restPerM(at));
  const weightN = weights(blank, load, h, middle);
  const kappa = rest.slice();
  let moment = 0;
  for (let round = 0; round < 4000; round++) {
    const buttRad = load.buttAngleRad - load.givesRadPerNm * moment;
    const shape = shapeOf(kappa, buttRad, h);
    const moments = momentsOn(shape.xM, weightN);
    let change = 0;
    for (let k = 0; k < cells; k++) {
      const wanted = rest[k] - compliance[k] * 0.5 * (moments[k] + moments[k + 1]);
      const by = 0.35 * (wanted - kappa[k]);
      kappa[k] += by;
      change = Math.max(change, Math.abs(by));
    }
    const moved = Math.abs(moments[0] - moment);
    moment = moments[0];
    if (change < 1e-9 && moved < 1e-9) return curveOf(shape, load.clampFromTipM, h);
  }
  throw new Error('the simulated blank found no bend');
}

/** Half of each cell's weight at either of its nodes; a hung weight shared between the two nodes beside it. */
function weights(
  blank: TrueBlank,
  { clampFromTipM, hung }: GivingLoad,
  h: number,
  middle: Float64Array,
): Float64Array {
  const weightN = new Float64Array(cells + 1);
  middle.forEach((at, k) => {
    const half = 0.5 * gravity * h * blank.kgPerM(at);
    weightN[k] += half;
    weightN[k + 1] += half;
  });
  for (const { fromTipM, massKg } of hung) {
    const place = Math.min(cells - 1e-9, Math.max(0, (clampFromTipM - fromTipM) / h));
    const node = Math.floor(place);
    weightN[node] += gravity * massKg * (1 - (place - node));
    weightN[node + 1] += gravity * massKg * (place - node);
  }
  return weightN;
}

interface Shape {
  xM: Float64Array;
  yM: Float64Array;
}

/** Arcs of constant curvature, one a cell. */
function shapeOf(kappa: Float64Array, buttRad: number, h: number): Shape {
  const xM = new Float64Array(cells + 1);
  const yM = new Float64Array(cells + 1);
  let theta = buttRad;
  for (let k = 0; k < cells; k++) {
    const turn = kappa[k] * h;
    const chord = h * (1 - turn ** 2 / 24);
    xM[k + 1] = xM[k] + chord * Math.cos(theta + 0.5 * turn);
    yM[k + 1] = yM[k] + chord * Math.sin(theta + 0.5 * turn);
    theta += turn;
  }
  return { xM, yM };
}

/** At every node, of the weights beyond it. */
function momentsOn(xM: Float64Array, weightN: Float64Array): Float64Array {
  const moments = new Float64Array(cells + 1);
  let [weight, lever] = [0, 0];
  for (let k = cells; k >= 0; k--) {
    weight += weightN[k];
    lever += weightN[k] * xM[k];
    moments[k] = lever - weight * xM[k];
  }
  return moments;
}

function curveOf({ xM, yM }: Shape, clampFromTipM: number, h: number): Curve {
  return { fromTipM: Float64Array.from({ length: cells + 1 }, (_, k) => clampFromTipM - k * h), xM, yM };
}

/**
 * A clamped rod as an operator on deflections y(s), s from the clamp, t the way to the tip:
 *
 *   A y = ∫∫ (1/EI) ∫∫ m y        (two integrals back from the tip, two up from the clamp)
 *
 * the deflection under the inertia forces of y at unit circular frequency. Small oscillations about the
 * straight rod are its eigenvectors, A y = ω⁻² y. Euler-Bernoulli beam: no shear, no rotary inertia, gravity
 * left out. Source: Stodola's iteration; Timoshenko, Vibration Problems in Engineering, ch. VI.
 *
 * Deflections are held at three Gauss points of every element and at every node, and each integral uses the
 * matrix of numerics/gauss-rule.ts. By that rule's identity A is symmetric in the product of masses exactly,
 * so Rayleigh-Ritz values are of sixth order in the element size. Elements end at table rows and at masses.
 */
import type { PointMass } from '../bend/mesh.ts';
import type { RodTables } from '../bend/rod.ts';
import { gaussRule } from '../numerics/gauss-rule.ts';
import { valueAt } from '../numerics/piecewise-linear.ts';

export interface VibratingRod {
  readonly elements: number;
  /** Per element, from the clamp. */
  readonly lengthM: Float64Array;
  /** 1/EI per Gauss point, three to an element. */
  readonly compliance: Float64Array;
  /** Mass that stands for each entry of a deflection: Gauss points first, then nodes. */
  readonly massKg: Float64Array;
  /** Distance from the clamp of each entry of a deflection. */
  readonly fromClampM: Float64Array;
  /** How many independent ways the masses can move, at most. */
  readonly movingParts: number;
}

export function vibratingRod(rod: RodTables, masses: readonly PointMass[], resolution: number): VibratingRod {
  const nodeFromTip = nodesFromTip(rod, masses, resolution);
  const elements = nodeFromTip.length - 1;
  const points = 3 * elements;
  const lengthM = new Float64Array(elements);
  const compliance = new Float64Array(points);
  const massKg = new Float64Array(points + elements + 1);
  const fromClampM = new Float64Array(points + elements + 1);
  for (let e = 0; e < elements; e++) {
    lengthM[e] = nodeFromTip[e] - nodeFromTip[e + 1];
    for (let i = 0; i < 3; i++) {
      const at = nodeFromTip[e] - gaussRule.place[i] * lengthM[e];
      const point = 3 * e + i;
      compliance[point] = 1 / valueAt(rod.stiffness, at);
      if (rod.mass) massKg[point] = gaussRule.weight[i] * lengthM[e] * valueAt(rod.mass, at);
      fromClampM[point] = rod.lengthM - at;
    }
  }
  for (let j = 0; j <= elements; j++) fromClampM[points + j] = rod.lengthM - nodeFromTip[j];
  for (const mass of masses) massKg[points + nearestNode(nodeFromTip, mass.fromTipM)] += mass.massKg;
  massKg[points] = 0; // what sits in the clamp does not move
  return {
    elements,
    lengthM,
    compliance,
    massKg,
    fromClampM,
    movingParts: massKg.reduce((count, kg) => count + (kg > 0 ? 1 : 0), 0),
  };
}

/** `y` ← A y; `scratch` holds three numbers per element twice over. */
export function applyRod(rod: VibratingRod, y: Float64Array, scratch: Scratch): void {
  momentsOf(rod, y, scratch);
  const { place } = scratch;
  const { elements, lengthM, compliance } = rod;
  const { weight, upTo } = gaussRule;
  const points = 3 * elements;
  const { moment, slope } = scratch;
  let turned = 0;
  let risen = 0;
  y[points] = 0;
  for (let e = 0; e < elements; e++) {
    const h = lengthM[e];
    const p = 3 * e;
    for (let i = 0; i < 3; i++) place[i] = compliance[p + i] * moment[p + i];
    for (let i = 0; i < 3; i++) {
      const row = upTo[i];
      slope[i] = turned + h * (row[0] * place[0] + row[1] * place[1] + row[2] * place[2]);
    }
    for (let i = 0; i < 3; i++) {
      const row = upTo[i];
      y[p + i] = risen + h * (row[0] * slope[0] + row[1] * slope[1] + row[2] * slope[2]);
    }
    turned += h * (weight[0] * place[0] + weight[1] * place[1] + weight[2] * place[2]);
    risen += h * (weight[0] * slope[0] + weight[1] * slope[1] + weight[2] * slope[2]);
    y[points + e + 1] = risen;
  }
}

interface Scratch {
  readonly moment: Float64Array;
  readonly place: Float64Array;
  readonly slope: Float64Array;
}

export function makeScratch(rod: VibratingRod): Scratch {
  return {
    moment: new Float64Array(3 * rod.elements),
    place: new Float64Array(3),
    slope: new Float64Array(3),
  };
}

/** Bending moments of the inertia forces m·y, from the tip inward. */
function momentsOf(rod: VibratingRod, y: Float64Array, { moment, place, slope }: Scratch): void {
  const { elements, lengthM, massKg } = rod;
  const { weight, upTo } = gaussRule;
  const points = 3 * elements;
  let force = 0;
  let above = 0;
  for (let e = elements - 1; e >= 0; e--) {
    force += massKg[points + e + 1] * y[points + e + 1];
    const h = lengthM[e];
    const p = 3 * e;
    // place: force on the part beyond each point; back from the element's upper end
    for (let i = 0; i < 3; i++) slope[i] = massKg[p + i] * y[p + i];
    const whole = slope[0] + slope[1] + slope[2];
    for (let i = 0; i < 3; i++) {
      const row = upTo[i];
      let below = 0;
      for (let j = 0; j < 3; j++) below += (row[j] / weight[j]) * slope[j];
      place[i] = force + whole - below;
    }
    const forceSum = weight[0] * place[0] + weight[1] * place[1] + weight[2] * place[2];
    for (let i = 0; i < 3; i++) {
      const row = upTo[i];
      const below = row[0] * place[0] + row[1] * place[1] + row[2] * place[2];
      moment[p + i] = above + h * (forceSum - below);
    }
    force += whole;
    above += h * forceSum;
  }
}

/** Node places, clamp first: table rows, masses, and between them enough nodes, closest at the tip. */
function nodesFromTip(rod: RodTables, masses: readonly PointMass[], resolution: number): number[] {
  const { lengthM } = rod;
  const wanted = [0, lengthM, ...masses.map((mass) => mass.fromTipM)];
  wanted.push(...rod.stiffness.x, ...(rod.mass?.x ?? []));
  for (let i = 1; i < resolution; i++) wanted.push(lengthM * (i / resolution) ** 2);
  const inside = wanted.filter((at) => at >= 0 && at <= lengthM).sort((a, b) => b - a);
  const nodes = [lengthM];
  for (const at of inside) if (nodes[nodes.length - 1] - at > 1e-7 * lengthM) nodes.push(at);
  nodes[nodes.length - 1] = 0;
  return nodes;
}

function nearestNode(nodeFromTip: readonly number[], at: number): number {
  let nearest = 0;
  for (let j = 1; j < nodeFromTip.length; j++) {
    if (Math.abs(nodeFromTip[j] - at) < Math.abs(nodeFromTip[nearest] - at)) nearest = j;
  }
  return nearest;
}

export function massProduct({ massKg }: VibratingRod, y: Float64Array, z: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < massKg.length; i++) sum += massKg[i] * y[i] * z[i];
  return sum;
}

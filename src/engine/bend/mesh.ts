/**
 * The rod cut into elements. Nodes run from the clamp (0) to the tip (count); element e lies between nodes
 * e - 1 and e. Every ring stands on a node; elements grow from tip to clamp, as the curvature falls.
 *
 * In an element the angle is linear; its bending spring is exact for a constant moment, 1 / ∫ ds/EI. Mass is
 * lumped to the nodes. Both are second order in the element size.
 */
import { pairAround } from '../numerics/pair-around.ts';
import {
  integralsOverCells,
  reciprocalIntegralsOverCells,
  valuesAtPlaces,
} from '../numerics/piecewise-linear.ts';
import type { RodTables } from './rod.ts';

export interface PointMass {
  fromTipM: number;
  massKg: number;
}

export interface Mesh {
  readonly count: number;
  /** Per node. */
  readonly fromTipM: Float64Array;
  /** Per element, index 1..count. */
  readonly lengthM: Float64Array;
  /** N·m per rad of turn across the element. */
  readonly springNm: Float64Array;
  /** Turn of the unloaded element, rad. */
  readonly restTurn: Float64Array;
  /** Lumped mass per node, kg. */
  readonly massKg: Float64Array;
  /** Bending stiffness per node, N·m². */
  readonly stiffnessNm2: Float64Array;
  /** Node of each ring, in the order given. */
  readonly ringNode: Int32Array;
  /** Elements between neighbouring break points, from the clamp up: hand it back to keep a mesh's shape. */
  readonly elementsPerPart: readonly number[];
}

export interface MeshOptions {
  /** Elements on the whole rod, about. */
  resolution: number;
  elementsPerPart?: readonly number[];
}

/** How much denser than the mean the tip is meshed, and the clamp sparser: an error of angle near the clamp moves the whole rod. */
const gradation = 0.3;

export function buildMesh(
  rod: RodTables,
  ringFromTipM: readonly number[],
  masses: readonly PointMass[],
  options: MeshOptions,
): Mesh {
  const parts = partsBetweenRings(rod.lengthM, ringFromTipM);
  const elementsPerPart =
    options.elementsPerPart ??
    parts.breaks.slice(1).map((to, i) => elementsOf(rod.lengthM, parts.breaks[i], to, options.resolution));
  const count = elementsPerPart.reduce((sum, n) => sum + n, 0);
  const fromTipM = nodePlaces(rod.lengthM, parts.breaks, elementsPerPart, count);
  const firstNode = [0];
  for (const n of elementsPerPart) firstNode.push(firstNode[firstNode.length - 1] + n);
  const ringNode = Int32Array.from(parts.breakOfRing, (b) => firstNode[b]);
  return { count, fromTipM, ringNode, elementsPerPart, ...elementData(rod, fromTipM, masses) };
}

/** Break points from the clamp up, and which of them each ring is. Rings closer than a micrometre share one. */
function partsBetweenRings(lengthM: number, ringFromTipM: readonly number[]) {
  const breaks = [lengthM];
  const order = ringFromTipM.map((_, i) => i).sort((a, b) => ringFromTipM[b] - ringFromTipM[a]);
  const breakOfRing = new Array<number>(ringFromTipM.length);
  for (const i of order) {
    const place = ringFromTipM[i];
    if (breaks[breaks.length - 1] - place > 1e-6) breaks.push(place);
    breakOfRing[i] = breaks.length - 1;
  }
  if (breaks[breaks.length - 1] > 1e-6) breaks.push(0);
  return { breaks, breakOfRing };
}

/** Node density, integrated from the tip: mean 1 over the rod, 1 + gradation at the tip. */
function densityTo(lengthM: number, fromTipM: number): number {
  const u = fromTipM / lengthM;
  return u * (1 + gradation - gradation * u);
}

function placeOfDensity(lengthM: number, density: number): number {
  const b = 1 + gradation;
  return (lengthM * (b - Math.sqrt(b * b - 4 * gradation * density))) / (2 * gradation);
}

function elementsOf(lengthM: number, from: number, to: number, resolution: number): number {
  const share = densityTo(lengthM, from) - densityTo(lengthM, to);
  return Math.max(2, Math.round(share * resolution));
}

function nodePlaces(lengthM: number, breaks: readonly number[], perPart: readonly number[], count: number) {
  const places = new Float64Array(count + 1);
  let node = 0;
  places[0] = breaks[0];
  for (let part = 0; part < perPart.length; part++) {
    const n = perPart[part];
    const from = densityTo(lengthM, breaks[part]);
    const to = densityTo(lengthM, breaks[part + 1]);
    for (let i = 1; i < n; i++) places[++node] = placeOfDensity(lengthM, from + ((to - from) * i) / n);
    places[++node] = breaks[part + 1];
  }
  return places;
}

function elementData(rod: RodTables, fromTipM: Float64Array, masses: readonly PointMass[]) {
  const nodes = fromTipM.length;
  const lengthM = new Float64Array(nodes);
  const springNm = new Float64Array(nodes);
  const restTurn = new Float64Array(nodes);
  const massKg = new Float64Array(nodes);
  const stiffnessNm2 = new Float64Array(nodes);
  reciprocalIntegralsOverCells(rod.stiffness, fromTipM, springNm);
  valuesAtPlaces(rod.stiffness, fromTipM, stiffnessNm2);
  if (rod.rest) integralsOverCells(rod.rest, fromTipM, restTurn);
  const elementKg = new Float64Array(nodes);
  if (rod.mass) integralsOverCells(rod.mass, fromTipM, elementKg);
  for (let e = 1; e < nodes; e++) {
    lengthM[e] = fromTipM[e - 1] - fromTipM[e];
    springNm[e] = 1 / springNm[e];
    massKg[e] += 0.5 * elementKg[e];
    massKg[e - 1] += 0.5 * elementKg[e];
  }
  for (const mass of masses) lumpMass(fromTipM, massKg, mass);
  return { lengthM, springNm, restTurn, massKg, stiffnessNm2 };
}

/** Shares a point mass between its two nodes so that its moment about the clamp stays. */
function lumpMass(
  fromTipM: Float64Array,
  massKg: Float64Array,
  { fromTipM: at, massKg: kg }: PointMass,
): void {
  const low = pairAround(fromTipM, at);
  const high = low + 1;
  const share = (fromTipM[low] - at) / (fromTipM[low] - fromTipM[high]);
  massKg[high] += kg * share;
  massKg[low] += kg * (1 - share);
}

/**
 * The slowest oscillation of a clamped rod and how it answers to stiffness and mass, by the operator of
 * vibrating-rod.ts: y ← A y / |A y| until ω⁻² stands still. With M the moment of the inertia forces m y,
 *
 *   ω⁻² = ∫ M²/EI ds / ∫ m y² ds,   ∂ ln ω² / ∂ ln EI(s) = (M²/EI) / ∫ M²/EI,   ∂ ln ω² / ∂ ln m(s) = -m y² / ∫ m y²
 *
 * (Rayleigh's quotient is stationary at the mode, so that the mode itself may be held still.)
 */
import type { RodTables } from '../bend/rod.ts';
import { gaussRule } from '../numerics/gauss-rule.ts';
import { applyRod, makeScratch, massProduct, type VibratingRod, vibratingRod } from './vibrating-rod.ts';

interface FirstMode {
  hz: number;
  /** Three to an element, from the clamp: the place, and the shares of ∂ ln ω² by ln EI and (negative) by ln m there. */
  fromTipM: Float64Array;
  byStiffness: Float64Array;
  byMass: Float64Array;
}

/** A rod without mass of its own has none: undefined. */
export function firstMode(tables: RodTables, resolution = 48): FirstMode | undefined {
  const rod = vibratingRod(tables, [], resolution);
  if (rod.movingParts === 0) return undefined;
  const length = rod.fromClampM[rod.fromClampM.length - 1];
  const shape = Float64Array.from(rod.fromClampM, (at) => (at / length) ** 2);
  const scratch = makeScratch(rod);
  let inverseSquare = 0;
  for (let step = 0; step < 60; step++) {
    scaleByMass(rod, shape);
    const before = Float64Array.from(shape);
    applyRod(rod, shape, scratch);
    const now = massProduct(rod, before, shape);
    const settled = Math.abs(now - inverseSquare) < 1e-13 * now;
    inverseSquare = now;
    if (settled) break;
  }
  scaleByMass(rod, shape);
  const deflection = Float64Array.from(shape);
  applyRod(rod, shape, scratch);
  return {
    hz: 1 / (2 * Math.PI * Math.sqrt(inverseSquare)),
    fromTipM: rod.fromClampM.slice(0, 3 * rod.elements).map((at) => tables.lengthM - at),
    ...sharesOf(rod, deflection, scratch.moment),
  };
}

function sharesOf(rod: VibratingRod, deflection: Float64Array, moment: Float64Array) {
  const points = 3 * rod.elements;
  const byStiffness = new Float64Array(points);
  const byMass = new Float64Array(points);
  let strain = 0;
  let kinetic = 0;
  for (let point = 0; point < points; point++) {
    const width = gaussRule.weight[point % 3] * rod.lengthM[Math.floor(point / 3)];
    byStiffness[point] = width * rod.compliance[point] * moment[point] ** 2;
    byMass[point] = -rod.massKg[point] * deflection[point] ** 2;
    strain += byStiffness[point];
    kinetic -= byMass[point];
  }
  return {
    byStiffness: byStiffness.map((value) => value / strain),
    byMass: byMass.map((value) => value / kinetic),
  };
}

function scaleByMass(rod: VibratingRod, y: Float64Array): void {
  const norm = Math.sqrt(massProduct(rod, y, y));
  for (let i = 0; i < y.length; i++) y[i] /= norm;
}

/**
 * GJ along the blank as a share of EI, where nobody has measured it.
 *
 * A thin tube has GJ/EI = 2 G/E of its wall. For a wall of one material that is 1/(1 + ν), 0.77 at most. A wall whose
 * fibres run along the rod is stiff in bending and soft in twist; layers at ±45° bring the twist back. Both follow
 * from the wall's lamina by thin-laminate theory (Jones, Mechanics of Composite Materials, 2nd ed., chapter 4).
 */
import type { Material } from '../bench/materials.ts';
import type { StiffnessRow } from '../bend/rod.ts';
import type { TorsionRow } from '../space/space-request.ts';

/** Of one layer, along its fibres (1) and across (2). */
export interface Lamina {
  E1Pa: number;
  E2Pa: number;
  G12Pa: number;
  nu12: number;
}

/** Shares of the wall: along the rod, at ±45° to it, round it; together 1. */
export interface Wall {
  along: number;
  at45: number;
  round: number;
}

type Fibre = 'carbon' | 'glass';

export const laminae: Record<Fibre, Lamina> = {
  // measured means of many coupons: Acta Mechanica et Automatica 2025, doi 10.2478/ama-2025-0022, table 1
  carbon: { E1Pa: 103.0e9, E2Pa: 7.36e9, G12Pa: 4.04e9, nu12: 0.37 },
  // E1 of 60 % E-glass as suppliers print it (40 to 45 GPa); the others from memory
  glass: { E1Pa: 42e9, E2Pa: 11e9, G12Pa: 4e9, nu12: 0.28 },
};

/** Walls between which blanks lie: a judgement, nobody publishes a blank's layers. */
export const walls: Record<'softest' | 'usual' | 'stiffest', Wall> = {
  softest: { along: 0.95, at45: 0, round: 0.05 },
  usual: { along: 0.75, at45: 0.1, round: 0.15 },
  stiffest: { along: 0.5, at45: 0.4, round: 0.1 },
};

export interface TorsionRange {
  low: number;
  usual: number;
  high: number;
}

/**
 * Grown cane is one wall along the rod: 2 G/E of a hardwood, whose G/E along the grain lies between 0.06 and 0.1 (Wood
 * Handbook, Forest Products Laboratory, table 5-1, from memory).
 */
const bambooRange: TorsionRange = { low: 0.12, usual: 0.16, high: 0.2 };

/** GJ/EI of blanks of a material: the laminae are published, the walls are a judgement. */
export function torsionRange(material: Material): TorsionRange {
  if (material === 'bamboo') return bambooRange;
  const lamina = laminae[material === 'glass' ? 'glass' : 'carbon'];
  const ratio = (wall: Wall) => tubeRatio(lamina, wall);
  return { low: ratio(walls.softest), usual: ratio(walls.usual), high: ratio(walls.stiffest) };
}

/** 2 G/E of a thin tube of such a wall. */
export function tubeRatio({ E1Pa, E2Pa, G12Pa, nu12 }: Lamina, { along, at45, round }: Wall): number {
  const scale = 1 / (1 - (nu12 * nu12 * E2Pa) / E1Pa);
  const [q11, q22, q12] = [E1Pa * scale, E2Pa * scale, nu12 * E2Pa * scale];
  const [sum, difference] = [0.25 * (q11 + q22 + 2 * q12), 0.25 * (q11 + q22 - 2 * q12)];
  const a11 = along * q11 + round * q22 + at45 * (sum + G12Pa);
  const a22 = along * q22 + round * q11 + at45 * (sum + G12Pa);
  const a12 = (along + round) * q12 + at45 * (sum - G12Pa);
  const a66 = (along + round) * G12Pa + at45 * difference;
  return (2 * a66) / (a11 - (a12 * a12) / a22);
}

export function torsionFromRatio(stiffness: readonly StiffnessRow[], ratio: number): TorsionRow[] {
  return stiffness.map(({ fromTipM, EINm2 }) => ({ fromTipM, GJNm2: ratio * EINm2 }));
}

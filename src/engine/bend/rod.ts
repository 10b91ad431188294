import { type PiecewiseLinear, piecewiseLinear } from '../numerics/piecewise-linear.ts';

/** Bending stiffness EI at a distance from the tip. */
export interface StiffnessRow {
  fromTipM: number;
  EINm2: number;
}
export interface MassRow {
  fromTipM: number;
  kgPerM: number;
}
/** Natural curvature in the plane of the bend; positive bends the tip up (angles grow from clamp to tip). */
export interface CurvatureRow {
  fromTipM: number;
  perM: number;
}

/**
 * The rod in front of the clamp. Tables are linear between rows and constant outside, ascending in
 * `fromTipM` (0 at the tip, `lengthM` at the clamp). Left out: massless, straight.
 */
export interface Rod {
  lengthM: number;
  stiffness: readonly StiffnessRow[];
  massPerLength?: readonly MassRow[];
  restCurvature?: readonly CurvatureRow[];
}

export interface RodTables {
  readonly lengthM: number;
  readonly stiffness: PiecewiseLinear;
  readonly mass: PiecewiseLinear | undefined;
  readonly rest: PiecewiseLinear | undefined;
}

export function rodTables(rod: Rod): RodTables {
  const column = <R extends { fromTipM: number }>(rows: readonly R[], value: (row: R) => number) =>
    piecewiseLinear(
      rows.map((row) => row.fromTipM),
      rows.map(value),
    );
  return {
    lengthM: rod.lengthM,
    stiffness: column(rod.stiffness, (row) => row.EINm2),
    mass: rod.massPerLength?.length ? column(rod.massPerLength, (row) => row.kgPerM) : undefined,
    rest: rod.restCurvature?.length ? column(rod.restCurvature, (row) => row.perM) : undefined,
  };
}

/** The planar mesh with what twist and side bow add. */
import { buildMesh, type Mesh, type MeshOptions, type PointMass } from '../bend/mesh.ts';
import type { RodTables } from '../bend/rod.ts';
import {
  integralsOverCells,
  type PiecewiseLinear,
  reciprocalIntegralsOverCells,
} from '../numerics/piecewise-linear.ts';

export interface SpaceTables extends RodTables {
  readonly torsion: PiecewiseLinear;
  readonly sideRest: PiecewiseLinear | undefined;
}

export interface SpaceMesh extends Mesh {
  /** N·m per rad of twist across the element. */
  readonly twistSpringNm: Float64Array;
  /** Turn to the right of the unloaded element, rad. */
  readonly restSideTurn: Float64Array;
}

export function buildSpaceMesh(
  rod: SpaceTables,
  ringFromTipM: readonly number[],
  masses: readonly PointMass[],
  options: MeshOptions,
): SpaceMesh {
  const mesh = buildMesh(rod, ringFromTipM, masses, options);
  const twistSpringNm = new Float64Array(mesh.count + 1);
  const restSideTurn = new Float64Array(mesh.count + 1);
  reciprocalIntegralsOverCells(rod.torsion, mesh.fromTipM, twistSpringNm);
  for (let e = 1; e <= mesh.count; e++) twistSpringNm[e] = 1 / twistSpringNm[e];
  if (rod.sideRest) integralsOverCells(rod.sideRest, mesh.fromTipM, restSideTurn);
  return { ...mesh, twistSpringNm, restSideTurn };
}

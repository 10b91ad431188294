/**
 * Largest surface strain of a bent rod, ε = |κ - κ0|·OD/2: κ0 the natural curvature, OD the outside diameter.
 * The curvature that counts is the one that the load adds. Levels to judge it by: bench/strain.ts.
 */
import { surfaceStrainPercent } from '../bench/strain.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import type { BendPoint } from './bend.ts';
import { type Rod, rodTables } from './rod.ts';

export interface LargestStrain {
  strainPercent: number;
  fromTipM: number;
}

/** `diameters` ascend in fromTipM, linear between rows and constant outside; 0 % at the tip where none is bent. */
export function largestStrain(
  points: readonly BendPoint[],
  rod: Rod,
  diameters: readonly { fromTipM: number; outsideM: number }[],
): LargestStrain {
  const { rest } = rodTables(rod);
  const outside = piecewiseLinear(
    diameters.map((row) => row.fromTipM),
    diameters.map((row) => row.outsideM),
  );
  let worst: LargestStrain = { strainPercent: 0, fromTipM: 0 };
  for (const { fromTipM, curvaturePerM } of points) {
    const added = curvaturePerM - (rest ? valueAt(rest, fromTipM) : 0);
    const strainPercent = surfaceStrainPercent(added, valueAt(outside, fromTipM));
    if (strainPercent > worst.strainPercent) worst = { strainPercent, fromTipM };
  }
  return worst;
}

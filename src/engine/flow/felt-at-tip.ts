/**
 * The mass felt at the tip. Pulled at the tip by a small force, the clamped rod moves by δ(s) = ∬ P s/EI; a mass m
 * where it moves δ has the inertia at the tip of m (δ/δ_tip)². A uniform rod: δ/δ_tip = 1 − 3ξ/2 + ξ³/2, ξ the share
 * from the tip.
 */
import type { PointMass } from '../bend/mesh.ts';
import type { Rod } from '../bend/rod.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';

export function feltAtTipKg(
  { lengthM, stiffness }: Pick<Rod, 'lengthM' | 'stiffness'>,
  masses: readonly PointMass[],
): number {
  const moves = tipPullShape({ lengthM, stiffness });
  return masses.reduce((sum, { fromTipM, massKg }) => sum + massKg * valueAt(moves, fromTipM) ** 2, 0);
}

/** Shares of the tip's movement, by distance from the tip. */
function tipPullShape({ lengthM, stiffness }: Pick<Rod, 'lengthM' | 'stiffness'>, steps = 600) {
  const softness = piecewiseLinear(
    stiffness.map(({ fromTipM }) => fromTipM),
    stiffness.map(({ EINm2 }) => EINm2),
  );
  const stepM = lengthM / steps;
  const bendAt = (step: number) => (lengthM - step * stepM) / valueAt(softness, lengthM - step * stepM);
  const moved = new Float64Array(steps + 1);
  let slope = 0;
  for (let step = 1; step <= steps; step++) {
    const [before, here] = [bendAt(step - 1), bendAt(step)];
    moved[step] = moved[step - 1] + slope * stepM + ((2 * before + here) * stepM * stepM) / 6;
    slope += ((before + here) * stepM) / 2;
  }
  const fromTip = moved.toReversed();
  return piecewiseLinear(
    Array.from(fromTip, (_, step) => step * stepM),
    fromTip.map((value) => value / moved[steps]),
  );
}

import type { Rod } from '../../src/engine/bend/rod.ts';
import { standardGravity } from '../../src/engine/units/gravity.ts';
import { type CheckRow, checkRowsOf } from '../check-values.ts';
import type { CheckGroup } from './check.ts';
import { aboutTip } from './elastica.ts';
import { type Accuracy, byProblem, lastPart, solved, taperedRod, tipCheck } from './unit-rod.ts';

/** Cones and thin tubes with a linear diameter, a dead force square to the axis. */
export function taperLarge(accuracy: Accuracy): CheckGroup {
  const checks = byProblem(checkRowsOf('taper.large.')).flatMap((problem) => {
    const { inputs } = problem[0];
    const power = problem[0].id.includes('.cone.') ? 4 : 3;
    const request = {
      rod: { ...taperedRod(power, inputs.d_tip_over_d_butt as number), massPerLength: undefined },
      buttAngleRad: 0,
      load: { tip: { xN: 0, yN: inputs.PL2_over_EIbutt as number } },
    };
    const end = solved(request, accuracy).points[0];
    const ours: Record<string, number> = { theta: end.angleRad, x: end.xM, y: end.yM };
    return problem.map((row) => tipCheck(row, ours[lastPart(row.id)], accuracy));
  });
  return { title: 'Tapers, large bend', about: aboutTip(accuracy), checks };
}

/** Closed forms of the linear theory, met by a load so small that its square does not show. */
export function taperSmall(accuracy: Accuracy): CheckGroup {
  const checks = checkRowsOf('taper.small.').map((row) => {
    const ours = smallDeflection(row, accuracy);
    return { ...tipCheck(row, ours, accuracy), allowance: 3 * accuracy.place * (row.value as number) };
  });
  const about = `Tip deflection and slope under a load small enough for the linear theory, ${accuracy.resolution} elements; allowed ${(3 * accuracy.place).toExponential(1)} of the value.`;
  return { title: 'Tapers, small bend', about, checks };
}

/** The row's number: deflection · EI_tip / (load · L^n). */
function smallDeflection(row: CheckRow, accuracy: Accuracy): number {
  const [, , name, slope] = row.id.split('.');
  const [shape, kind] = name.split('_');
  const tipRatio = 1 / ((row.inputs.m_butt_over_tip_diameter ?? row.inputs.m) as number);
  const power = shape === 'cone' ? 4 : 3;
  const tipStiffness = tipRatio ** power;
  // a load that drops the tip by about 1e-5 of the length
  const load = (1e-5 * tipStiffness) / (row.value as number);
  const answer = solved(
    { rod: loadedTaper(kind, power, tipRatio, load), buttAngleRad: 0, load: tipOf(kind, load) },
    accuracy,
  );
  const end = answer.points[0];
  return ((slope === 'slope' ? -end.angleRad : -end.yM) * tipStiffness) / load;
}

/** `load` is the tip force (P), the uniform load per length (w) or the own weight per length at the tip (self). */
function loadedTaper(kind: string, power: number, tipRatio: number, load: number): Rod {
  if (kind === 'w') return taperedRod(power, tipRatio, load / standardGravity, 0);
  if (kind === 'self') return taperedRod(power, tipRatio, load / standardGravity / tipRatio ** (power - 2));
  return taperedRod(power, tipRatio);
}

function tipOf(kind: string, load: number) {
  return { tip: { xN: 0, yN: kind === 'P' ? -load : 0 } };
}

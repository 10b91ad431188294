import { assemble, makeWorkspace, placeNodes } from '../../src/engine/bend/equilibrium.ts';
import { restAngles } from '../../src/engine/bend/follow.ts';
import { buildMesh } from '../../src/engine/bend/mesh.ts';
import { type Rod, rodTables } from '../../src/engine/bend/rod.ts';
import { factorChained } from '../../src/engine/numerics/chained-tridiagonal.ts';
import { standardGravity } from '../../src/engine/units/gravity.ts';
import { checkRowsOf, checkValue } from '../check-values.ts';
import type { CheckGroup } from './check.ts';
import { aboutTip } from './elastica.ts';
import { type Accuracy, byProblem, lastPart, solved, tipCheck, uniformRod } from './unit-rod.ts';

/** Uniform rod under its own weight: level, rising from the clamp, and with a weight at the tip. */
export function heavyRods(accuracy: Accuracy): CheckGroup {
  const checks = byProblem(checkRowsOf('heavy.')).flatMap((problem) => {
    const { inputs } = problem[0];
    const buttDegrees = (inputs.clamp_deg_above_horizontal ?? 0) as number;
    const request = {
      rod: heavyRod(inputs.qL3_over_EI as number),
      buttAngleRad: (buttDegrees * Math.PI) / 180,
      load: { tip: { xN: 0, yN: -((inputs.PL2_over_EI ?? 0) as number) } },
    };
    const end = solved(request, accuracy).points[0];
    const down = inputs.clamp_deg_above_horizontal === undefined ? -1 : 1;
    const ours: Record<string, number> = { theta: down * end.angleRad, x: end.xM, y: down * end.yM };
    return problem.map((row) => tipCheck(row, ours[lastPart(row.id)], accuracy));
  });
  return { title: 'Heavy cantilevers', about: aboutTip(accuracy), checks };
}

/** The own weight at which an upright rod loses its stability (Greenhill 1881). */
export function greenhill(accuracy: Accuracy): CheckGroup {
  let stable = 0;
  let fallen = 20;
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (stable + fallen);
    if (standsUpright(middle, accuracy)) stable = middle;
    else fallen = middle;
  }
  const [row] = checkRowsOf('greenhill.qL3');
  const theirs = checkValue('greenhill.qL3');
  const checks = [{ ...tipCheck(row, stable, accuracy), allowance: accuracy.place * theirs }];
  const about = `Largest qL³/EI at which the straight upright rod is a minimum of energy, ${accuracy.resolution} elements, by bisection on the sign of the Hessian.`;
  return { title: 'Greenhill: the upright rod', about, checks };
}

function standsUpright(load: number, { resolution }: Accuracy): boolean {
  const mesh = buildMesh(rodTables(heavyRod(load)), [], [], { resolution });
  const work = makeWorkspace(mesh);
  restAngles(mesh, Math.PI / 2, work.theta);
  placeNodes(mesh, undefined, work);
  assemble(mesh, { line: undefined, tipXN: 0, tipYN: 0 }, 1, work);
  return factorChained(work.hessian);
}

function heavyRod(load: number): Rod {
  return { ...uniformRod, massPerLength: [{ fromTipM: 0, kgPerM: load / standardGravity }] };
}

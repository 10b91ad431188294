import { checkRowsOf } from '../check-values.ts';
import type { CheckGroup } from './check.ts';
import { tipUnder } from './tip-load.ts';
import { type Accuracy, byProblem, lastPart, solved, tipCheck, uniformRod } from './unit-rod.ts';

/** Uniform rod, dead force at the tip, square to the unbent axis or at an angle to it. */
export function elasticaDead(accuracy: Accuracy): CheckGroup {
  const rows = [...checkRowsOf('elastica.dead90.'), ...checkRowsOf('elastica.inclined')];
  const checks = byProblem(rows).flatMap((problem) => {
    const { inputs } = problem[0];
    const force = (inputs.PL2_over_EI ?? inputs.FL2_over_EI) as number;
    const degrees = (inputs.load_angle_deg ?? inputs.load_angle_from_axis_deg) as number;
    const direction = (degrees * Math.PI) / 180;
    const tip = { xN: force * Math.cos(direction), yN: force * Math.sin(direction) };
    const end = solved({ rod: uniformRod, buttAngleRad: 0, load: { tip } }, accuracy).points[0];
    const ours: Record<string, number> = {
      theta: end.angleRad,
      x: end.xM,
      u: 1 - end.xM,
      w: end.yM,
      y: end.yM,
    };
    return problem.map((row) => tipCheck(row, ours[lastPart(row.id)], accuracy));
  });
  return { title: 'Elastica: dead load at the tip', about: aboutTip(accuracy), checks };
}

/** Four values printed in 1981 and one rotation, five decimals. */
export function elasticaPrinted(accuracy: Accuracy): CheckGroup {
  const checks = checkRowsOf('lit.mattiasson').map((row) => {
    const tip = { xN: 0, yN: row.inputs.PL2_over_EI as number };
    const end = solved({ rod: uniformRod, buttAngleRad: 0, load: { tip } }, accuracy).points[0];
    const ours: Record<string, number> = { theta: end.angleRad, u: 1 - end.xM, w: end.yM };
    return { ...tipCheck(row, ours[lastPart(row.id)], accuracy), allowance: accuracy.place + 0.5e-5 };
  });
  const about = `${aboutTip(accuracy)} Half a unit of the last printed decimal is allowed besides.`;
  return { title: 'Elastica: a printed table', about, checks };
}

/** A force that stays square to the tip, and an end moment: not offered by the tool, but its equations hold. */
export function elasticaFollower(accuracy: Accuracy): CheckGroup {
  const follower = byProblem(checkRowsOf('elastica.follower.').filter((row) => !row.id.endsWith('.load')));
  const checks = follower.flatMap((problem) => {
    const followerN = problem[0].inputs.PL2_over_EI as number;
    const end = tipUnder({ followerN, momentNm: 0 }, accuracy);
    const ours: Record<string, number> = { theta: end.angleRad, x: end.xM, y: end.yM };
    return problem.map((row) => tipCheck(row, ours[lastPart(row.id)], accuracy, 3));
  });
  const about = `${aboutTip(accuracy)} Three times that is allowed: the rod curls further than any fishing rod.`;
  return { title: 'Elastica: follower load', about, checks };
}

export function elasticaMoment(accuracy: Accuracy): CheckGroup {
  const checks = byProblem(checkRowsOf('elastica.moment.')).flatMap((problem) => {
    const momentNm = problem[0].inputs.ML_over_EI as number;
    const end = tipUnder({ followerN: 0, momentNm }, accuracy);
    return problem.map((row) => tipCheck(row, lastPart(row.id) === 'x' ? end.xM : end.yM, accuracy));
  });
  return { title: 'Elastica: end moment', about: aboutTip(accuracy), checks };
}

export function aboutTip({ resolution, place }: Accuracy): string {
  return `Tip place (share of the length) and tip angle, ${resolution} elements; allowed ${place.toExponential(1)}, which is ${(3000 * place).toPrecision(2)} mm on a 3 m rod.`;
}

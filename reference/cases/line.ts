import type { BendRequest } from '../../src/engine/bend/bend.ts';
import { checkRowsOf } from '../check-values.ts';
import type { Check, CheckGroup } from './check.ts';
import { type Accuracy, byProblem, lastPart, solved, tipCheck, uniformRod } from './unit-rod.ts';

interface RingCase {
  T: number;
  line_exit_direction_deg: number;
  guides_s: number[];
  ring_standoff_along_left_normal: number[];
  reel_standoff: number;
}

/** A frictionless line through rings on and off the axis: tip, force on every ring, line angle in every ring. */
export function lineThroughRings(accuracy: Accuracy): CheckGroup {
  const checks = byProblem(checkRowsOf('guides.')).flatMap((problem) => {
    const inputs = problem[0].inputs as unknown as RingCase;
    const answer = solved(requestOf(inputs), accuracy);
    const end = answer.points[0];
    const tip: Record<string, number> = { tip_x: end.xM, tip_y: end.yM, tip_theta: end.angleRad };
    const buttFirst = [...answer.rings].reverse().map((ring) => ring.lineAngleRad);
    const perRing: Record<string, number[]> = {
      forces: buttFirst.map((angle) => 2 * inputs.T * Math.sin(angle / 2)),
      wrap: buttFirst.map((angle) => (angle * 180) / Math.PI),
    };
    return problem.flatMap((row): Check[] => {
      const part = lastPart(row.id);
      if (!perRing[part]) return [tipCheck(row, tip[part], accuracy)];
      const degrees = part === 'wrap' ? 180 / Math.PI : inputs.T;
      return (row.value as number[]).map((theirs, k) => ({
        ...tipCheck(row, perRing[part][k], accuracy),
        id: `${row.id}[${k}]`,
        theirs,
        allowance: degrees * accuracy.place,
      }));
    });
  });
  const about = `Statics by collocation against our minimum of energy, ${accuracy.resolution} elements: tip, force on each ring, line angle in each ring (butt first).`;
  return { title: 'Line through rings', about, checks };
}

function requestOf(inputs: RingCase): BendRequest {
  const heights = inputs.ring_standoff_along_left_normal;
  const side = heights[0] > 0 ? 'over' : 'under';
  const guides = inputs.guides_s.map((fromClampM, k) => ({
    fromTipM: 1 - fromClampM,
    ringHeightM: Math.abs(heights[k]),
    side: side as 'over' | 'under',
  }));
  return {
    rod: uniformRod,
    buttAngleRad: 0,
    guides: guides.reverse(),
    reel: { alongM: 0, offsetM: Math.abs(inputs.reel_standoff) },
    load: { line: { tensionN: inputs.T, pullAngleRad: (inputs.line_exit_direction_deg * Math.PI) / 180 } },
  };
}

/** How much lower the tip hangs than under the dead force T at the tip, `rings` rings evenly on the axis. */
export function excessDrop(rings: number, accuracy: Accuracy): number {
  const even = Array.from({ length: rings }, (_, k) => (k + 1) / rings);
  const inputs = {
    T: 2,
    line_exit_direction_deg: -90,
    guides_s: even,
    ring_standoff_along_left_normal: even.map(() => 0),
    reel_standoff: 0,
  };
  const dead = { rod: uniformRod, buttAngleRad: 0, load: { tip: { xN: 0, yN: -2 } } };
  return solved(dead, accuracy).points[0].yM - solved(requestOf(inputs), accuracy).points[0].yM;
}

import { expect, test } from 'vitest';
import { realisticRods } from '../../../reference/cases/realistic-rods.ts';
import { bend } from '../bend/bend.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { twoHands } from './two-hands.ts';

test('a stiff weightless level rod is a lever: the lower hand pushes down by arm over arm', () => {
  const load = { tip: { xN: 0, yN: -2 } };
  const rod = { lengthM: 3, stiffness: [{ fromTipM: 0, EINm2: 1e9 }] };
  const forces = twoHands({ betweenM: 0.5, buttAngleRad: 0, load }, bend({ rod, buttAngleRad: 0, load }));
  expect(forces.lowerN).toBeCloseTo(-2 * (3 / 0.5), 5);
  expect(forces.upperN).toBeCloseTo(2 + 12, 5);
  expect(forces.upperAlongN).toBeCloseTo(0, 6);
  expect(forces.momentNm).toBeCloseTo(6, 5);
});

test.each(realisticRods.filter(({ name }) => /surf|two-handed/.test(name)))(
  '$name: what the hands hold is the moment at the clamp and what the reel is pulled by',
  ({ request }) => {
    const answer = bend(request, { resolution: 1200 });
    const { rod, masses, load, buttAngleRad, reel } = request;
    const betweenM = 0.6;
    const forces = twoHands(
      { betweenM, buttAngleRad, load, masses, massPerLength: rod.massPerLength },
      answer,
    );
    const table = piecewiseLinear(
      rod.stiffness.map((row) => row.fromTipM),
      rod.stiffness.map((row) => row.EINm2),
    );
    const rest = rod.restCurvature
      ? valueAt(
          piecewiseLinear(
            rod.restCurvature.map((row) => row.fromTipM),
            rod.restCurvature.map((row) => row.perM),
          ),
          rod.lengthM,
        )
      : 0;
    // EI times the curvature added at the clamp is what lies beyond gives the rod there
    const clampNm = -valueAt(table, rod.lengthM) * (answer.points.at(-1)!.curvaturePerM - rest);
    const side = request.guides![0].side === 'over' ? 1 : -1;
    const [c, s] = [Math.cos(buttAngleRad), Math.sin(buttAngleRad)];
    const [x, y] = [reel!.alongM * c - side * reel!.offsetM * s, reel!.alongM * s + side * reel!.offsetM * c];
    const ring = answer.rings.at(-1)!;
    const far = Math.hypot(ring.xM - x, ring.yM - y);
    const reelNm = -((x * (ring.yM - y) - y * (ring.xM - x)) * load.line!.tensionN) / far;
    expect(forces.momentNm / (clampNm + reelNm)).toBeCloseTo(1, 2);
    expect(forces.lowerN).toBeCloseTo(-forces.momentNm / betweenM, 9);
  },
);

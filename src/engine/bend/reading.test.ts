import { expect, test } from 'vitest';
import { uniformRod } from '../../../reference/cases/unit-rod.ts';
import { randomBendRequest } from '../../../reference/population.ts';
import { type BendAnswer, type BendRequest, bend } from './bend.ts';
import { largestStrain } from './strain.ts';

const lined = Array.from({ length: 40 }, (_, i) => randomBendRequest(i + 1, 'bench')).filter(
  ({ load }) => load.line,
);

test('readings at the shipped resolution are those of a mesh sixteen times as fine', () => {
  for (const request of lined) {
    const [ours, fine] = [bend(request), bend(request, { resolution: 4800 })];
    const most = (values: number[]) => Math.max(...values.map(Math.abs));
    const widest = most(fine.spans.map(({ gapM }) => gapM));
    const sharpest = most(fine.spans.map(({ extraBendPerM }) => extraBendPerM));
    fine.spans.forEach(({ gapM, extraBendPerM }, k) => {
      expect(Math.abs(ours.spans[k].gapM - gapM)).toBeLessThan(1e-3 * widest + 2e-6);
      expect(Math.abs(ours.spans[k].extraBendPerM - extraBendPerM)).toBeLessThan(4e-3 * sharpest + 1e-6);
    });
    fine.rings.forEach(({ lineAngleRad }, k) => {
      expect(Math.abs(ours.rings[k].lineAngleRad - lineAngleRad)).toBeLessThan(2e-4);
    });
  }
});

/** The definition, on the returned points: distance of the axis from the chord, less the ring height along it. */
function gapByDefinition(request: BendRequest, answer: BendAnswer, k: number): number {
  const guides = request.guides!;
  const [tipSide, buttSide] = [answer.rings[k], answer.rings[k + 1]];
  const [dx, dy] = [tipSide.xM - buttSide.xM, tipSide.yM - buttSide.yM];
  const length = Math.hypot(dx, dy);
  const side = guides[0].side === 'over' ? 1 : -1;
  return answer.points
    .filter(({ fromTipM }) => fromTipM >= guides[k].fromTipM && fromTipM <= guides[k + 1].fromTipM)
    .reduce((most, { xM, yM }) => {
      const along = ((xM - buttSide.xM) * dx + (yM - buttSide.yM) * dy) / length;
      const off = (-side * ((yM - buttSide.yM) * dx - (xM - buttSide.xM) * dy)) / length;
      const share = Math.min(1, Math.max(0, along / length));
      const height = guides[k + 1].ringHeightM + share * (guides[k].ringHeightM - guides[k + 1].ringHeightM);
      return Math.max(most, off - height);
    }, 0);
}

test('every gap is what its definition gives on the returned points, rings of any height', () => {
  for (const request of lined) {
    const answer = bend(request, { resolution: 1200 });
    answer.spans.forEach(({ gapM }, k) => {
      expect(gapM).toBeCloseTo(gapByDefinition(request, answer, k), 5);
    });
  }
});

test('on a rod bent to a circle the gap is its rise over the chord less the ring height', () => {
  const [radiusM, heightM, spanM] = [0.8, 0.01, 0.3];
  const answer = bend({
    rod: {
      ...uniformRod,
      stiffness: [{ fromTipM: 0, EINm2: 1e7 }],
      restCurvature: [{ fromTipM: 0, perM: -1 / radiusM }],
    },
    buttAngleRad: 0,
    guides: [0, spanM, 0.7].map((fromTipM) => ({ fromTipM, ringHeightM: heightM, side: 'under' })),
    reel: { alongM: -0.1, offsetM: 0.03 },
    load: { line: { tensionN: 5, pullAngleRad: -2 } },
  });
  const half = spanM / (2 * radiusM);
  const rise = radiusM - (radiusM - heightM) * Math.cos(half) - heightM;
  expect(answer.spans[0].gapM).toBeCloseTo(rise, 7);
  expect(answer.spans[0].extraBendPerM).toBeCloseTo((5 * rise) / 1e7, 13);
  // the line turns in the middle ring by half of either span's turn
  expect(answer.rings[1].lineAngleRad).toBeCloseTo(half + 0.4 / (2 * radiusM), 5);
});

test('guides on the far side of the bend stand off by nothing', () => {
  for (const request of lined.slice(0, 10)) {
    const down = {
      ...request,
      load: { line: { tensionN: 4, pullAngleRad: -Math.PI / 2 } },
      buttAngleRad: 0.2,
    };
    const over = bend({
      ...down,
      guides: down.guides!.map((guide) => ({ ...guide, side: 'over' as const })),
    });
    expect(Math.max(...over.spans.map(({ gapM }) => gapM))).toBeLessThan(1e-3);
  }
});

test('strain counts the curvature that the load adds, not the natural bow', () => {
  const bowed = { ...uniformRod, restCurvature: [{ fromTipM: 0, perM: 0.3 }] };
  const diameters = [{ fromTipM: 0, outsideM: 0.01 }];
  const still = bend({ rod: bowed, buttAngleRad: 0, load: {} });
  expect(largestStrain(still.points, bowed, diameters).strainPercent).toBeLessThan(1e-9);
  // a force too small to turn anything: moment F·L at the clamp, strain F·L/EI·OD/2
  const pushed = bend({ rod: bowed, buttAngleRad: 0, load: { tip: { xN: 0, yN: 1e-3 } } });
  const worst = largestStrain(pushed.points, bowed, diameters);
  expect(worst.fromTipM).toBe(1);
  expect(worst.strainPercent).toBeCloseTo(100 * 1e-3 * still.points[0].xM * 0.005, 7);
});

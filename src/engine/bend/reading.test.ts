import { expect, test } from 'vitest';
import { uniformRod } from '../../../reference/cases/unit-rod.ts';
import { randomBendRequest } from '../../../reference/population.ts';
import { bend } from './bend.ts';

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

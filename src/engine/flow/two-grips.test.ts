import { expect, test } from 'vitest';
import { realisticRods } from '../../../reference/cases/realistic-rods.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { twoGrips } from './two-grips.ts';

const { request } = realisticRods[0];
const guides = request.guides!.slice(1);
const fromTipM = guides.map((guide) => guide.fromTipM);
const ladder: LadderRequest = {
  rod: request.rod,
  buttAngleRad: request.buttAngleRad,
  reel: request.reel!,
  guides: { count: guides.length, ringHeightsM: guides.map((guide) => guide.ringHeightM), side: 'under' },
  tipTop: { ringHeightM: request.guides![0].ringHeightM },
  ladder: [1, 4].map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
  limits: { lineAngleRad: 0.26, gapM: 0.01, extraBendPerM: 0.05 },
};

test('hands farther apart pull less: their moment stays', () => {
  const [near, far] = [0.3, 0.6].map((betweenM) =>
    twoGrips({ ladder, fromTipM, upperBehindM: 0.1, betweenM }),
  );
  near.forEach((at, load) => {
    expect(at.status).toBe('converged');
    expect(at.momentNm).toBeCloseTo(far[load].momentNm, 12);
    expect(at.lowerN).toBeCloseTo(2 * far[load].lowerN, 12);
    // the line pulls the tip down: the lower hand holds the butt down
    expect(at.lowerN).toBeLessThan(0);
  });
});

test('the upper hand farther back: the moment grows by what pulls square to the handle times that way', () => {
  const [front, back] = [0, 0.15].map((upperBehindM) =>
    twoGrips({ ladder, fromTipM, upperBehindM, betweenM: 0.4 }),
  );
  front.forEach((at, load) => {
    const square = at.upperN + at.lowerN;
    expect(back[load].momentNm - at.momentNm).toBeCloseTo(0.15 * square, 9);
    expect(back[load].upperN + back[load].lowerN).toBeCloseTo(square, 9);
  });
});

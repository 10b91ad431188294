import { describe, expect, test } from 'vitest';
import { castingBlank, castingDiameters as diameters } from '../../../test/support/casting-blank.ts';
import { makeLadder, readLadder } from './ladder.ts';
import { type LayoutFound, layout } from './layout.ts';
import type { LayoutRequest } from './layout-request.ts';
import { lineOnBlank } from './line-on-blank.ts';

/** An invented 7 ft casting blank with low rings: 8 of them cannot keep the line wholly off it. */
const count = 8;
const free: LayoutRequest = {
  rod: castingBlank,
  buttAngleRad: 0,
  reel: { alongM: -0.09, offsetM: 0.03 },
  guides: { count, ringHeightsM: [...new Array(6).fill(0.006), 0.012, 0.018], side: 'over' },
  tipTop: { ringHeightM: 0.006 },
  firstFromTipM: 0.1,
  strippingFromTipM: 1.25,
  ladder: [2.7, 16.9].map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
};
const place = (request: LayoutRequest) => layout(request) as LayoutFound;
const judged = place({ ...free, contact: { diameters }, limits: { intoBlankM: 0.0005 } });
const through = place(free);
const deepestOf = (fromTipM: readonly number[]) => {
  const ladder = { ...free, contact: { diameters }, ladder: free.ladder!, limits: judged.limits };
  return readLadder(makeLadder(ladder), fromTipM).worstOf.intoBlank;
};

describe('guides on top are placed by how deep the line would cut into the blank too', () => {
  test('it goes less deep than where they were placed as if the line ran through, and both are read alike', () => {
    expect(deepestOf(through.fromTipM).ratio).toBeGreaterThan(1.2 * judged.score.worst);
    expect(deepestOf(judged.fromTipM).value).toBeCloseTo(judged.score.intoBlankM!, 5);
    expect(judged.worstAt.metric).toBe('intoBlank');
    expect(judged.score.worst).toBeCloseTo(judged.score.intoBlankM! / judged.limits.intoBlankM!, 9);
  });

  test('with a limit that nothing reaches they stand where they stood', () => {
    const loose = place({ ...free, contact: { diameters }, limits: { intoBlankM: 1 } });
    for (const [i, at] of loose.fromTipM.entries()) expect(at).toBeCloseTo(through.fromTipM[i], 3);
  });

  test('without the blank’s diameters, and under the rod, nothing of it counts or is answered', () => {
    const under = { ...free, guides: { ...free.guides, side: 'under' as const } };
    const asked = place({ ...under, contact: { diameters }, limits: { intoBlankM: 1e-6 } });
    expect(asked).toEqual(place(under));
    for (const { limits, score } of [asked, through]) {
      expect([...Object.keys(limits), ...Object.keys(score)]).not.toContain('intoBlankM');
    }
  });

  test('clear at every load: the line touches nothing between rings', () => {
    const many = { ...free.guides, count: 14, ringHeightsM: new Array(14).fill(0.012) };
    const asked = { ...free, guides: many, contact: { diameters } };
    const found = place(asked);
    expect(found.score.intoBlankM).toBeLessThan(0);
    const ladder = { ...asked, ladder: found.ladder, limits: found.limits };
    const on = lineOnBlank({ ladder, fromTipM: found.fromTipM, diameters });
    expect(on.flatMap(({ touched }) => touched).filter(({ stretch }) => stretch < 14)).toEqual([]);
  });
});

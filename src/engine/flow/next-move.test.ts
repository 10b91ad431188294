import { expect, test } from 'vitest';
import { flyGuides, inchM, irregularRod, nineFootFive } from '../../../test/rods/invented-rods.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import { type LayoutFound, layout } from '../layout/layout.ts';
import { defaultLadder, defaultLimits } from '../layout/layout-defaults.ts';
import { settleLayout } from '../layout/layout-request.ts';
import { makeRatioProbe, ratiosAt } from '../layout/ratios.ts';
import { stretchesFor } from './move-stretches.ts';
import { nextMove } from './next-move.ts';

const rod = irregularRod(nineFootFive, 5);
/** Limits that ten guides keep with something to spare, or do not. */
function asked(count: number, limitShare = 1) {
  const limits = defaultLimits(rod.lengthM);
  return {
    rod,
    buttAngleRad: Math.PI / 4,
    ...flyGuides(count),
    firstFromTipM: 4.5 * inchM,
    strippingFromTipM: 78 * inchM,
    keepOut: [{ fromTipM: 0.67, toTipM: 0.73 }],
    ladder: defaultLadder(rod)!,
    limits: {
      ...limits,
      lineAngleRad: limitShare * limits.lineAngleRad,
      gapM: limitShare * limits.gapM,
      extraBendPerM: limitShare * limits.extraBendPerM,
    },
  };
}
const request = asked(10, 1.5);
const placed = layout(request) as LayoutFound;

test('a layout just placed is as even as this blank gets', () => {
  expect(placed.score.worst).toBeLessThan(1);
  const placedWorst = placed.score.worst;
  const answer = nextMove({ request, fromTipM: placed.fromTipM, placedWorst });
  expect(answer).toEqual({ code: 'as-even-as-it-gets', now: answer.now });
  expect(answer.now.ratio).toBeCloseTo(placedWorst, 2);
});

test('marks kept for want of sureness are kept, whatever would be better on the likeliest blank', () => {
  const fromTipM = placed.fromTipM.with(6, placed.fromTipM[6] + 0.12);
  const kept = { why: 'unread' as const, marks: 'start' as const };
  const answer = nextMove({ request, fromTipM, placedWorst: placed.score.worst, kept });
  expect(answer).toEqual({ code: 'keep', now: answer.now, kept });
  expect(answer.now.ratio).toBeGreaterThan(placed.score.worst);
});

test('a guide out of its place is found and put back, and no other single move does better', () => {
  for (const { guide, byM } of [
    { guide: 6, byM: 0.12 },
    { guide: 7, byM: -0.1 },
    { guide: 2, byM: 0.04 },
  ]) {
    const fromTipM = placed.fromTipM.with(guide, placed.fromTipM[guide] + byM);
    const before = [...fromTipM];
    const shares: number[] = [];
    const answer = nextMove({ request, fromTipM, placedWorst: placed.score.worst }, (share) =>
      shares.push(share),
    );
    expect(fromTipM).toEqual(before);
    expect(shares.at(-1)).toBe(1);
    expect(answer.code).toBe('move');
    const move = answer.move!;
    const ladder = makeLadder(request);
    const after = readLadder(ladder, fromTipM.with(move.guide, move.toM));
    expect(after.worstAt).toEqual(move.after);
    expect(move.there.after).toBeLessThan(move.there.before);
    expect(move.there.before).toBe(answer.now.value);
    // by brute force: every guide at every tenth of an inch that the rules leave it
    const probe = makeRatioProbe(ladder);
    const settled = settleLayout(request);
    let least = Number.POSITIVE_INFINITY;
    fromTipM.forEach((_, k) => {
      if (k === 0 || k === fromTipM.length - 1) return;
      for (const { fromM, toM } of stretchesFor(k, fromTipM, settled!)) {
        for (let at = fromM; at <= toM; at += 0.1 * inchM) {
          least = Math.min(least, ratiosAt(probe, fromTipM.with(k, at)).worst);
        }
      }
    });
    expect(move.after.ratio).toBeLessThan(1.005 * least);
  }
});

test('a move stays clear of ferrules, of neighbours and of guides that are held', () => {
  const settled = settleLayout({
    ...request,
    footM: new Array(10).fill(0.02),
    pinned: [{ index: 5, fromTipM: placed.fromTipM[5] }],
  });
  for (let guide = 1; guide < 9; guide++) {
    for (const { fromM, toM } of stretchesFor(guide, placed.fromTipM, settled!)) {
      expect(toM <= 0.67 - 0.01 + 1e-9 || fromM >= 0.73 + 0.01 - 1e-9).toBe(true);
      expect(fromM).toBeGreaterThanOrEqual(placed.fromTipM[guide - 1] + 0.05 - 1e-9);
      expect(toM).toBeLessThanOrEqual(placed.fromTipM[guide + 1] - 0.05 + 1e-9);
    }
  }
  const held = nextMove({
    request: { ...request, pinned: [{ index: 6, fromTipM: placed.fromTipM[6] + 0.06 }] },
    fromTipM: placed.fromTipM.with(6, placed.fromTipM[6] + 0.06),
  });
  expect(held.move?.guide).not.toBe(6);
});

test('beyond the limits: more guides where they would do, else that no number tried does', () => {
  const tight = asked(10, 1.2 * placed.score.worst);
  const best = layout(tight) as LayoutFound;
  expect(best.score.worst).toBeGreaterThan(1);
  const question = { request: tight, fromTipM: best.fromTipM, placedWorst: best.score.worst };
  expect(nextMove({ ...question, fewest: 11 })).toMatchObject({ code: 'more-guides', fewest: 11 });
  expect(nextMove(question).code).toBe('beyond-limits');
});

test('two guides out of place, beyond the limit: placing anew says more than one move', () => {
  const fromTipM = placed.fromTipM.with(2, placed.fromTipM[2] + 0.04).with(7, placed.fromTipM[7] - 0.1);
  const answer = nextMove({ request, fromTipM, placedWorst: placed.score.worst });
  expect(answer.now.ratio).toBeGreaterThan(1);
  expect(answer.code).toBe('place-anew');
});

test('where nothing keeps the limits, it is still said first what brings most', () => {
  const tight = asked(10, 1.2 * placed.score.worst);
  const best = layout(tight) as LayoutFound;
  const fromTipM = best.fromTipM.with(2, best.fromTipM[2] + 0.04).with(7, best.fromTipM[7] - 0.1);
  const answer = nextMove({ request: tight, fromTipM, placedWorst: best.score.worst });
  expect(best.score.worst).toBeGreaterThan(1);
  expect(answer.move?.after.ratio).toBeGreaterThan(best.score.worst);
  expect(answer.code).toBe('place-anew');
});

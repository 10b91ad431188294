import { describe, expect, test } from 'vitest';
import { flyGuides, inchM, irregularRod, nineFootFive } from '../../../test/rods/invented-rods.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import { type LayoutFound, layout } from '../layout/layout.ts';
import { defaultLadder, defaultLimits } from '../layout/layout-defaults.ts';
import { judgeTipRepairs, worthCutting } from './judged-tip-repair.ts';

/** An invented nine-footer whose ten guides were placed on it; its tip breaks off. */
const rod = irregularRod(nineFootFive, 5);
const request = {
  rod,
  buttAngleRad: Math.PI / 4,
  ...flyGuides(10),
  firstFromTipM: 4.5 * inchM,
  strippingFromTipM: 78 * inchM,
  keepOut: [],
  ladder: defaultLadder(rod)!,
  limits: defaultLimits(rod.lengthM),
};
const { fromTipM } = layout(request) as LayoutFound;
const judged = (lostM: number) => judgeTipRepairs({ request, fromTipM, lostM });

/** The same by another way: stiffness and mass as functions of the place, the rod made anew from the break down. */
function worstOfCut(lostM: number, marks: readonly number[], rings: readonly number[]): number {
  const at = <K extends string>(rows: readonly ({ fromTipM: number } & Record<K, number>)[], key: K) =>
    Array.from({ length: 400 }, (_, i) => {
      const was = lostM + ((rod.lengthM - lostM) * i) / 399;
      const b = Math.max(
        1,
        rows.findIndex(({ fromTipM: next }) => next >= was),
      );
      const share = (was - rows[b - 1].fromTipM) / (rows[b].fromTipM - rows[b - 1].fromTipM);
      return { fromTipM: was - lostM, value: rows[b - 1][key] + share * (rows[b][key] - rows[b - 1][key]) };
    });
  const cut = {
    lengthM: rod.lengthM - lostM,
    stiffness: at(rod.stiffness, 'EINm2').map(({ fromTipM, value }) => ({ fromTipM, EINm2: value })),
    massPerLength: at(rod.massPerLength ?? [], 'kgPerM').map(({ fromTipM, value }) => ({
      fromTipM,
      kgPerM: value,
    })),
  };
  const { guides } = request;
  const massesKg = guides.massesKg && rings.map((ring) => guides.massesKg?.[ring] ?? 0);
  const ringHeightsM = rings.map((ring) => guides.ringHeightsM[ring]);
  const anew = { ...request, rod: cut, guides: { ...guides, count: rings.length, ringHeightsM, massesKg } };
  return readLadder(makeLadder(anew), marks).worst;
}

describe('a broken tip, judged by how the blank bends', () => {
  test.each([1, 3, 5, 8])(
    '%s in gone: both are read on the cut blank, each with the rings it keeps',
    (inches) => {
      const lostM = inches * inchM;
      const answer = judged(lostM);
      if (!answer) throw new Error('no answer');
      for (const { repair, worst } of [answer.leave, ...(answer.move ? [answer.move] : [])]) {
        const kept = repair.guides.flatMap((fate, guide) =>
          'fromTipM' in fate ? [{ guide, at: fate.fromTipM }] : [],
        );
        const anew = worstOfCut(
          lostM,
          kept.map(({ at }) => at),
          kept.map(({ guide }) => guide),
        );
        expect(worst.ratio / anew).toBeCloseTo(1, 2);
      }
      expect(answer.leave.repair.guides.some(({ kind }) => kind === 'moved' || kind === 'taken-off')).toBe(
        false,
      );
    },
  );
  test('what is proposed is never worse than leaving the guides, and cuts wraps only for a clear gain', () => {
    const proposals = [0.5, 1, 2, 3, 4, 5, 6, 7, 8, 10].map((inches) => judged(inches * inchM));
    expect(new Set(proposals.map((answer) => answer?.proposed))).toEqual(new Set(['leave', 'move']));
    for (const answer of proposals) {
      if (answer?.proposed !== 'move') continue;
      expect(answer.move?.atTip.ratio).toBeLessThan((1 - worthCutting) * answer.leave.atTip.ratio);
      expect(answer.move?.worst.ratio).toBeLessThan(1.01 * answer.leave.worst.ratio);
      expect(answer.leave.atTip.ratio).toBeGreaterThan(Math.min(1, answer.before.ratio));
    }
  });
  test('a few millimetres gone move nothing', () => {
    expect(judged(0.004)).toMatchObject({ proposed: 'leave' });
  });
  test('with hardly a rod left nothing is judged', () => {
    expect(judged(rod.lengthM - 0.2)).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import { flyGuides, inchM, irregularRod, nineFootFive } from '../../../test/rods/invented-rods.ts';
import type { Section } from '../bench/bench.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import { type LayoutFound, layout } from '../layout/layout.ts';
import { defaultLadder, defaultLimits } from '../layout/layout-defaults.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { replaceSection } from '../repair/replaced-section.ts';
import { judgeSectionRepair, worthMoving } from './judged-section-repair.ts';

/** An invented nine-footer of two sections whose ten guides were placed on it; a section is replaced. */
const rod = irregularRod(nineFootFive, 5);
const request = {
  rod,
  buttAngleRad: Math.PI / 4,
  ...flyGuides(10),
  firstFromTipM: 4.5 * inchM,
  strippingFromTipM: 78 * inchM,
  keepOut: [{ fromTipM: 53 * inchM, toTipM: 55 * inchM }],
  ladder: defaultLadder(rod)!,
  limits: defaultLimits(rod.lengthM),
};
const { fromTipM } = layout(request) as LayoutFound;
const tipM = 1.4;
const sections = [
  { id: 't', name: 'tip', lengthM: tipM, diameters: [], joint: { kind: 'sleeve', overlapM: 0.05 } },
  { id: 'b', name: 'butt', lengthM: 1.5, diameters: [] },
] as unknown as Section[];

const renewed = (index: number, newLengthM: number) =>
  replaceSection({ sections, index, newLengthM, guidesFromTipM: fromTipM });
const judged = (index: number, newLengthM: number) =>
  judgeSectionRepair({ request, repair: renewed(index, newLengthM) });

/** The same by another way: stiffness and mass as functions of the place, the longer tip section sampled anew. */
function worstByFunctions(newTipM: number, marks: readonly number[]): number {
  const wasAt = (at: number) => (at < newTipM ? (at * tipM) / newTipM : at - (newTipM - tipM));
  const column = <K extends string>(rows: readonly ({ fromTipM: number } & Record<K, number>)[], key: K) =>
    piecewiseLinear(
      rows.map((row) => row.fromTipM),
      rows.map((row) => row[key]),
    );
  const [stiff, heavy] = [column(rod.stiffness, 'EINm2'), column(rod.massPerLength ?? [], 'kgPerM')];
  const lengthM = rod.lengthM + newTipM - tipM;
  const stations = Array.from({ length: 600 }, (_, i) => (lengthM * i) / 599);
  const anew = {
    ...request,
    rod: {
      ...rod,
      lengthM,
      stiffness: stations.map((at) => ({ fromTipM: at, EINm2: valueAt(stiff, wasAt(at)) })),
      massPerLength: stations.map((at) => ({ fromTipM: at, kgPerM: valueAt(heavy, wasAt(at)) })),
    },
  };
  return readLadder(makeLadder(anew), marks).worst;
}

describe('a replaced section, judged by how the blank bends', () => {
  test('as long as the old one, everything is as it was', () => {
    const answer = judged(0, tipM);
    expect(answer?.carried?.fromTipM).toEqual(fromTipM);
    expect(answer?.carried?.worst.ratio).toBeCloseTo(answer?.before.ratio ?? 0, 9);
    expect(answer?.proposed).toBe('carried');
  });

  test.each([1.3, 1.55, 1.7])('a tip section of %s m: read on the blank as it has become', (newTipM) => {
    const answer = judged(0, newTipM);
    const both = [answer?.carried, answer?.anew].flatMap((marks) => marks ?? []);
    // The shorter one has no surface under one of its guides.
    expect(both).toHaveLength(newTipM < tipM ? 1 : 2);
    for (const marks of both) {
      expect(marks.worst.ratio / worstByFunctions(newTipM, marks.fromTipM)).toBeCloseTo(1, 2);
    }
  });

  test('guides that stay are not moved, and what is proposed is the better by a clear share', () => {
    const proposals = [1.25, 1.3, 1.5, 1.6, 1.75].map((newTipM) => ({ newTipM, answer: judged(0, newTipM) }));
    for (const { newTipM, answer } of proposals) {
      const { marks } = renewed(0, newTipM);
      marks.forEach(({ rewrapped, fromTipM: at }, i) => {
        if (!rewrapped && at !== undefined) expect(answer?.anew?.fromTipM[i]).toBeCloseTo(at, 9);
      });
      if (answer?.proposed !== 'anew' || !answer.carried) continue;
      expect(answer.anew?.worst.ratio).toBeLessThan((1 - worthMoving) * answer.carried.worst.ratio);
    }
    expect(new Set(proposals.map(({ answer }) => answer?.proposed))).toContain('anew');
  });

  test.each([1.4, 1.62])('a butt section of %s m, the grip on it as long as before', (newButtM) => {
    const answer = judged(1, newButtM);
    const { marks } = renewed(1, newButtM);
    expect(marks.some(({ rewrapped }) => rewrapped)).toBe(true);
    expect(answer?.carried?.worst.ratio).toBeGreaterThan(0);
    marks.forEach(({ rewrapped, fromTipM: at }, i) => {
      if (!rewrapped) expect(answer?.anew?.fromTipM[i]).toBeCloseTo(at ?? 0, 9);
    });
    expect(answer?.anew?.worst.ratio).toBeLessThan(1.001 * (answer?.carried?.worst.ratio ?? 0));
  });

  test('a section that carries no guide leaves nothing to judge', () => {
    const none = renewed(1, 1.6);
    const bare = { ...none, marks: none.marks.map((mark) => ({ ...mark, rewrapped: false })) };
    expect(judgeSectionRepair({ request, repair: bare })).toBeUndefined();
  });
});

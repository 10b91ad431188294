import { describe, expect, test } from 'vitest';
import { commonGuideCount, commonGuides, commonHandle, commonMarks } from './common-build.ts';
import { guideKindIds, guideKinds, rackKindIds } from './guide-kinds.ts';
import type { GuideNumbers } from './guide-sizes.ts';
import { guideInWords, guideKindOptions, guideNumbers, typicalByHeight, typicalGuide } from './guides.ts';
import { handlePartPlaces, isSeat } from './handle-parts.ts';
import { rodKindIds, rodKinds } from './rod-kinds.ts';
import { lineWeightNumber } from './rod-usual.ts';

const foot = 0.3048;
const inch = 0.0254;
const handleOf = (gripFrontFromButtM: number) => ({ ...commonHandle('fly', 2.743), gripFrontFromButtM });

describe('kinds of guide', () => {
  const sized = guideKinds.filter(({ listed }) => listed.length > 0);

  test('ids that records hold are all still there', () => {
    expect(rackKindIds).toEqual(
      expect.arrayContaining(['tip-top', 'snake', 'single-foot', 'ringed', 'stripping', 'keeper']),
    );
    expect(guideKindIds).not.toContain('keeper');
    expect(new Set(rackKindIds).size).toBe(rackKindIds.length);
  });

  test.each(sized.map((kind) => [kind.id, kind] as const))(
    '%s: every listed size has numbers that grow with it',
    (_, kind) => {
      const numbers = kind.listed.map((size) => kind.sizes(size));
      expect(kind.sizes(kind.example)).toBeDefined();
      const ringed = numbers.filter((one) => one?.outsideM !== undefined);
      for (const list of [numbers.filter((one) => one?.outsideM === undefined), ringed]) {
        list.slice(1).forEach((one, i) => {
          const before = list[i];
          if (!one || !before) throw new Error('a listed size without numbers');
          expect(one.ringHeightM).toBeGreaterThan(before.ringHeightM);
          expect(one.lengthM).toBeGreaterThan(before.lengthM);
          expect(one.massKg).toBeGreaterThan(before.massKg);
          expect(one.insideM).toBeGreaterThan(before.insideM);
        });
      }
      for (const one of ringed) {
        const openShare = (one?.insideM ?? 0) / (one?.outsideM ?? 1);
        expect(openShare >= 0.6 && openShare <= 0.75).toBe(true);
      }
    },
  );

  test('no ring along the blank is set so low that it would cut into it', () => {
    for (const { id, place, listed, sizes } of sized) {
      if (place !== 'line' || id === 'roller') continue;
      for (const size of listed) {
        const { outsideM = 0, ringHeightM = 0 } = sizes(size) ?? {};
        expect(ringHeightM).toBeGreaterThan(outsideM / 2);
      }
    }
  });

  test('a ringed 25 stands higher than a ringed 20, and a size that says nothing has no numbers', () => {
    const heightMm = (kind: 'ringed' | 'ringed-high', size: string) =>
      1000 * (typicalGuide(kind, size)?.ringHeightM ?? Number.NaN);
    expect(heightMm('ringed', '20')).toBeCloseTo(14, 9);
    expect(heightMm('ringed', '25')).toBeGreaterThan(15);
    expect(heightMm('ringed-high', '25 mm')).toBeCloseTo(25, 9);
    for (const size of ['', '1/0', 'large', '99']) expect(guideNumbers('ringed', size)).toBeUndefined();
    expect(guideNumbers('snake', '12 mm')).toBeUndefined();
    expect(guideNumbers('snake', 'constructor')).toBeUndefined();
  });

  test('the numbers of before: middles of the trade’s ranges for the sizes it names', () => {
    const mmAndGrams = (kind: 'snake' | 'ringed' | 'stripping', size: string) => {
      const { ringHeightM, lengthM, massKg } = guideNumbers(kind, size) as GuideNumbers;
      return [ringHeightM, lengthM, massKg].map((value) => Number((1000 * value).toFixed(6)));
    };
    expect(mmAndGrams('snake', '1')).toEqual([2.2, 22.5, 0.095]);
    expect(mmAndGrams('ringed', '6 mm')).toEqual([6.5, 14, 0.25]);
    expect(mmAndGrams('ringed', '8')).toEqual([9, 22, 0.5]);
    expect(mmAndGrams('ringed', '20')).toEqual([14, 44, 3.65]);
    expect(mmAndGrams('stripping', '12 mm')).toEqual([11, 36, 1.45]);
    expect(guideNumbers('snake', '3')?.insideM).toBeCloseTo(0.00525, 9);
  });

  test('a tip-top is said by its ring, with its tube before it or not', () => {
    expect(typicalGuide('tip-top', '5.5/64, 6 mm')?.ringHeightM).toBe(
      typicalGuide('tip-top', '6')?.ringHeightM,
    );
    expect(typicalGuide('tip-top', 'fly')).toMatchObject({ ringHeightM: 0.0025, massKg: 0.00025 });
  });

  test('a size may be written with its sign and a word behind it', () => {
    expect(typicalGuide('snake', '#1/0, light wire')?.massKg).toBe(typicalGuide('snake', '1/0')?.massKg);
    expect(typicalGuide('stripping', '12mm')?.massKg).toBe(typicalGuide('stripping', '12')?.massKg);
  });

  test('by its ring’s height the nearest listed size is found', () => {
    expect(typicalByHeight('snake', 0.00235).size).toBe('2');
    expect(typicalByHeight('ringed-high', 0.03).size).toBe('30');
  });

  test('names for lists and sentences', () => {
    expect(guideKindOptions('line').map(({ value }) => value)).not.toContain('tip-top');
    expect(guideKindOptions('rack').map(({ value }) => value)).toEqual(rackKindIds);
    expect(guideInWords('ringed-high')).toBe('ringed guide, high frame');
    expect(guideInWords('stripping')).toBe('stripping guide');
    expect(guideInWords('keeper')).toBe('hook keeper');
  });
});

describe('kinds of rod', () => {
  test('old records’ kinds are still there', () => {
    expect(rodKindIds).toEqual(expect.arrayContaining(['fly', 'spinning', 'casting']));
  });

  test.each(rodKinds.map((kind) => [kind.id as (typeof rodKindIds)[number], kind] as const))(
    '%s: set, marks and handle from 5 to 15 ft are ones that can be built',
    (id, kind) => {
      for (let feet = 5; feet <= 15; feet += 0.5) {
        const blankLengthM = feet * foot;
        const { guides, tipTop } = commonGuides({ rodKind: id, lineWeight: '8', blankLengthM });
        expect(guides).toHaveLength(commonGuideCount(id, blankLengthM));
        for (const guide of [tipTop, ...guides]) expect(typicalGuide(guide.kind, guide.size)).toBeDefined();
        guides.slice(1).forEach((guide, i) => {
          expect(guide.massKg).toBeGreaterThanOrEqual(guides[i].massKg);
        });
        const handle = commonHandle(id, blankLengthM);
        const { firstFromTipM, strippingFromTipM } = commonMarks(id, blankLengthM, handle);
        expect(firstFromTipM).toBeGreaterThan(2.9 * inch);
        expect(strippingFromTipM).toBeGreaterThan(firstFromTipM + 0.3);
        expect(strippingFromTipM).toBeLessThan(blankLengthM - handle.gripFrontFromButtM);
        const parts = handlePartPlaces(id, handle);
        expect(parts.map(({ name }) => name)).toEqual(kind.handle.parts);
        expect(parts[0].fromButtM).toBe(0);
        expect(parts.at(-1)?.toButtM).toBe(handle.gripFrontFromButtM);
        for (const { fromButtM, toButtM } of parts) expect(toButtM).toBeGreaterThan(fromButtM);
        const seat = parts.find(({ name }) => isSeat(name));
        expect(handle.reelFromButtM).toBeGreaterThanOrEqual(seat?.fromButtM ?? 99);
        expect(handle.reelFromButtM).toBeLessThanOrEqual(seat?.toButtM ?? 0);
      }
    },
  );

  test('a reel typed ahead of the grip or behind the butt turns no part inside out', () => {
    for (const id of rodKindIds) {
      for (const reelFromButtM of [-0.2, 0, 0.9]) {
        const handle = { gripFrontFromButtM: 0.3, reelFromButtM, reelOffsetM: 0.05 };
        for (const { fromButtM, toButtM } of handlePartPlaces(id, handle)) {
          expect(toButtM).toBeGreaterThanOrEqual(fromButtM);
        }
      }
    }
  });

  test('a guide a foot and one; a half foot rounds up; a 12 ft surf rod has seven', () => {
    const counts = [2.286, 2.591, 2.743, 2.77, 3.353].map((lengthM) => commonGuideCount('fly', lengthM));
    expect(counts).toEqual([9, 10, 10, 10, 12]);
    expect(commonGuideCount('surf', 12 * foot)).toBe(7);
    expect(commonGuideCount('casting', 7 * foot)).toBe(9);
  });

  test('first mark and stripping guide as on common rods', () => {
    const inches = (lengthIn: number) => {
      const marks = commonMarks('fly', lengthIn * inch, handleOf(0.26));
      return [marks.firstFromTipM / inch, marks.strippingFromTipM / inch];
    };
    expect(inches(108)[0]).toBeCloseTo(4.5, 9);
    expect(inches(108)[1]).toBeCloseTo(78, 9);
    expect(inches(90)[0]).toBeCloseTo(3.5, 9);
    expect(inches(90)[1]).toBeCloseTo(62, 9);
  });

  test('a grip a tenth of an inch longer moves the stripping guide by half an inch at most', () => {
    for (const id of rodKindIds) {
      for (let frontM = 0.15; frontM < 0.8; frontM += 0.1 * inch) {
        const at = (gripM: number) => commonMarks(id, 3.3, handleOf(gripM)).strippingFromTipM;
        expect(Math.abs(at(frontM + 0.1 * inch) - at(frontM))).toBeLessThan(0.5 * inch + 1e-9);
      }
    }
    // 20 in ahead of a two-handed grip, as before
    const twoHanded = commonMarks('fly', 132 * inch, handleOf(22 * inch)).strippingFromTipM;
    expect(twoHanded / inch).toBeCloseTo(132 - 42, 9);
  });

  test('the hardware of a 9 ft 5-weight weighs 2 to 4 g, and ends in a stripping guide', () => {
    const { guides, tipTop } = commonGuides({ rodKind: 'fly', lineWeight: '5', blankLengthM: 2.743 });
    const grams = 1000 * guides.reduce((sum, guide) => sum + guide.massKg, tipTop.massKg);
    expect(grams > 2 && grams < 4).toBe(true);
    expect(guides.at(-1)?.kind).toBe('stripping');
  });

  test('reads a line weight however it is written', () => {
    const read = ['5', '#5', 'WF8F', '5-6', 'none', '444'].map(lineWeightNumber);
    expect(read).toEqual([5, 5, 8, 5, undefined, undefined]);
    expect(commonHandle('fly', 3.35).gripFrontFromButtM).toBeGreaterThan(
      commonHandle('fly', 2.74).gripFrontFromButtM,
    );
  });
});

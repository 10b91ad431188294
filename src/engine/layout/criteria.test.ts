import { expect, test } from 'vitest';
import { criterionWords } from '../../words/criteria.ts';
import { shopWriter } from '../../words/writer.ts';
import { countedValues, criteria, ringLimitRad, valueAtGuide } from './criteria.ts';
import { defaultLimits } from './layout-defaults.ts';
import { largestOf, worstOfLoad, worstValues } from './worst.ts';

const readings = {
  rings: [0.9, 0.1, 0.2, 0.8].map((lineAngleRad) => ({ xM: 0, yM: 0, lineAngleRad })),
  spans: [
    { gapM: 0.002, extraBendPerM: 0.03 },
    { gapM: 0.004, extraBendPerM: 0.02 },
    { gapM: 0.001, extraBendPerM: 0.01 },
  ],
};

test('rings count between tip-top and stripping guide, spans all', () => {
  const counted = Object.fromEntries(criteria.map((one) => [one.id, countedValues(one, readings)]));
  expect(counted).toEqual({
    lineAngle: { first: 1, values: [0.1, 0.2] },
    gap: { first: 0, values: [0.002, 0.004, 0.001] },
    extraBend: { first: 0, values: [0.03, 0.02, 0.01] },
    intoBlank: { first: 0, values: [0, 0, 0] },
  });
  const angle = criteria[0];
  expect([0, 1, 2].map((guide) => valueAtGuide(angle, readings, guide))).toEqual([0.1, 0.2, undefined]);
});

test('the worst of each is found with its place, and the furthest up its limit of all', () => {
  const limits = { lineAngleRad: 0.4, gapM: 0.01, extraBendPerM: 0.05 };
  const worst = worstOfLoad(readings, limits, 2);
  expect(worst.gap).toEqual({ metric: 'gap', load: 2, index: 1, value: 0.004, limit: 0.01, ratio: 0.4 });
  expect(worst.lineAngle).toMatchObject({ index: 2, ratio: 0.5 });
  expect(largestOf(worst)).toBe(worst.extraBend);
  expect(worstValues(worst, limits)).toEqual({ lineAngleRad: 0.2, gapM: 0.004, extraBendPerM: 0.03 });
});

test('usual limits: 15°, L/250, 0.125/L (calibrated, docs/theory-layout.md)', () => {
  expect(defaultLimits(2.5)).toEqual({ lineAngleRad: Math.PI / 12, gapM: 0.01, extraBendPerM: 0.05 });
});

test('a limit is written in one way and with one unit', () => {
  const said = (system: 'inch' | 'mm') =>
    criteria.map(({ id, quantity }) =>
      criterionWords[id].figure(defaultLimits(2.5, true)[quantity]!, shopWriter({ system })),
    );
  expect(said('mm')).toEqual(['15°', '10 mm', '0.050 1/m', '1 mm']);
  expect(said('inch')).toEqual(['15°', '13⁄32 in', '0.050 1/m', '1⁄32 in']);
});

test('the tip-top has no limit, the first guide from the reel its own or none', () => {
  const limits = { lineAngleRad: 0.26, firstLineAngleRad: 0.35 };
  expect([0, 1, 4, 5].map((ring) => ringLimitRad(limits, ring, 5))).toEqual([undefined, 0.26, 0.26, 0.35]);
  expect(ringLimitRad({ lineAngleRad: 0.26 }, 5, 5)).toBeUndefined();
});

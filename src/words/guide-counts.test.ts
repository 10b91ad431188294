import { expect, test } from 'vitest';
import type { GuideCount } from '../engine/flow/count-answer.ts';
import { countRows, fewestInWords } from './guide-counts.ts';
import { shopWriter } from './writer.ts';

const limits = { lineAngleRad: Math.PI / 12, gapM: 0.01, extraBendPerM: 0.05 };
const one = (count: number, degrees: number, extraBendPerM = 0.04): GuideCount => ({
  count,
  status: 'converged',
  fromTipM: [],
  readings: { lineAngleRad: (degrees * Math.PI) / 180, gapM: 0.009, extraBendPerM },
  worst: degrees / 15,
  worstAt: { metric: 'lineAngle', load: 0, index: 1, value: 0, limit: 1, ratio: degrees / 15 },
  keepsLimits: degrees <= 15,
  addedKg: 0.006,
  feltAtTipKg: 0.00049,
});
const counts = [one(10, 16), one(11, 14.5), one(12, 13)];
const writer = shopWriter({ system: 'inch' });

test('each number of guides in figures, those beyond a limit marked', () => {
  const [angle, gap, felt] = countRows(counts, limits, writer);
  expect(angle.figures).toEqual([
    { text: '16°', beyond: true },
    { text: '14.5°', beyond: false },
    { text: '13°', beyond: false },
  ]);
  expect(gap.figures[0]).toEqual({ text: '11⁄32 in', beyond: false });
  expect(felt.figures[0].text).toBe('0.5 g');
});

test('bend that the line adds has a row only where it decides', () => {
  const rows = countRows([one(10, 14, 0.06), one(11, 13)], limits, writer);
  expect(rows.map(({ name }) => name)).toContain('bend added, of its limit');
  expect(rows[2].figures).toEqual([
    { text: '120 %', beyond: true },
    { text: '80 %', beyond: false },
  ]);
});

test('the fewest are claimed only where fewer were tried', () => {
  expect(fewestInWords({ counts, fewest: 11 })).toBe('11 are the fewest within your limits.');
  expect(fewestInWords({ counts, fewest: 10 })).toBe('10 guides keep your limits. Fewer were not tried.');
  expect(fewestInWords({ counts })).toBe('None of these keeps your limits.');
});

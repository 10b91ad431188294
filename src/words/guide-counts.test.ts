import { expect, test } from 'vitest';
import type { GuideCount } from '../engine/flow/count-answer.ts';
import { clearRow, countRows, fewestClearInWords, fewestInWords } from './guide-counts.ts';
import { ladderWriter } from './ladder-writer.ts';
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
  expect(rows.map(({ name }) => name)).toContain('bend added by the line');
  expect(rows[2].figures).toEqual([
    { text: '0.060 1/m', beyond: true },
    { text: '0.040 1/m', beyond: false },
  ]);
});

test('the fewest are claimed only where fewer were tried', () => {
  expect(fewestInWords({ counts, fewest: 11 })).toBe('11 are the fewest within your limits.');
  expect(fewestInWords({ counts, fewest: 10 })).toBe('10 guides keep your limits. Fewer were not tried.');
  expect(fewestInWords({ counts })).toBe('None of these keeps your limits.');
});

test('guides on top: the fewest that keep the line off the blank, load by load', () => {
  const ladder = ladderWriter(shopWriter({ system: 'mm' }), [0.1, 0.25, 0.8]);
  const onBlank = (...clear: boolean[]) => clear.map((one) => ({ clear: one, behindLastOnly: false }));
  const counts = [
    { ...one(9, 14), onBlank: onBlank(true, false, false) },
    { ...one(10, 13), onBlank: onBlank(true, true, false) },
  ];
  expect(clearRow(counts, ladder)[0].figures).toEqual([
    { text: 'from 250 g', beyond: true },
    { text: 'from 800 g', beyond: true },
  ]);
  expect(clearRow([one(9, 14)], ladder)).toEqual([]);
  expect(fewestClearInWords({ counts, fewestClear: [9, 10, undefined] }, ladder)).toBe(
    'Fewest that keep the line off the blank: 9 guides up to 100 g, 10 guides up to 250 g, none of these clears it at 800 g.',
  );
  const behind = [{ clear: true, behindLastOnly: false }, ...onBlank(false, false)];
  behind[2].behindLastOnly = true;
  const onlyThere = [{ ...one(10, 13), onBlank: behind }];
  expect(fewestClearInWords({ counts: onlyThere, fewestClear: [10, undefined, undefined] }, ladder)).toMatch(
    /at 800 g\. From 800 g it lies on the blank behind the last guide: take a higher one there, or move it toward the butt\.$/,
  );
});

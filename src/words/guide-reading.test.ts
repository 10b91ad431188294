import { expect, test } from 'vitest';
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import { guideAngleInWords, guideReadingInWords } from './guide-reading.ts';
import { ladderWriter } from './ladder-writer.ts';
import { shopWriter } from './writer.ts';

const writer = ladderWriter(shopWriter({ system: 'mm' }), [0.1, 0.4]);
const degree = Math.PI / 180;
const limits = { lineAngleRad: 15 * degree, gapM: 0.01, extraBendPerM: 0.05 };
const load = (degrees: number, gapM: number) => ({
  rings: [0, degrees, 2].map((angle) => ({ lineAngleRad: angle * degree })),
  spans: [{ gapM }, { gapM }],
  ruled: [{ ruleGapM: gapM + 0.01 }, { ruleGapM: gapM + 0.01 }],
});
const reading = { loads: [load(9, 0.004), load(16, 0.003)] } as unknown as RuledReading;

test('a guide in hand says its largest line angle beside the limit, and at which load', () => {
  expect(guideAngleInWords(reading, 0, limits, writer)).toBe(
    'Line angle 16° of 15° at 400 g, over the limit',
  );
  // the first guide from the reel has no limit of its own here
  expect(guideAngleInWords(reading, 1, limits, writer)).toBe('');
});

test('in full it goes on with the gap by rule', () => {
  expect(guideReadingInWords(reading, 0, limits, writer)).toBe(
    'Line angle 16° of 15° at 400 g, over the limit; gap by rule 14 mm of 20 mm at 100 g',
  );
  expect(guideReadingInWords(reading, 1, limits, writer)).toBe('Gap by rule 14 mm of 20 mm at 100 g');
});

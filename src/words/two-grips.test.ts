import { expect, test } from 'vitest';
import { ladderWriter } from './ladder-writer.ts';
import { lowerHandInWords, twoGripsInWords } from './two-grips.ts';
import { shopWriter } from './writer.ts';

const writer = ladderWriter(shopWriter({ system: 'mm' }), [0.1, 0.9]);
const at = { status: 'converged' as const, lowerN: -39.2266, upperN: 48.05, upperAlongN: 0, momentNm: 15.7 };

test('a hand’s pull is said as a weight, and which way', () => {
  expect(lowerHandInWords(at, writer)).toBe('4000 g down');
  expect(lowerHandInWords({ ...at, lowerN: 9.80665 }, writer)).toBe('1000 g up');
  expect(twoGripsInWords([at, at], writer)).toBe(
    'At 900 g the lower hand holds the butt down with 4000 g. The upper hand carries 4900 g.',
  );
});

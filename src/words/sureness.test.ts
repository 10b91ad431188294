import { expect, test } from 'vitest';
import { surenessInWords, surenessRangesInWords } from './sureness.ts';
import { shopWriter } from './writer.ts';

const spread = { low: 0.984, high: 1.44 };
const tips = [0.012, 0.034].map((plusMinusM) => ({ outM: spread, upM: spread, plusMinusM }));
const own = {
  blanks: 99,
  unbent: 1,
  worst: { ...spread, expected: 1.1 },
  lineAngleRad: { low: 0.2443, high: 0.2967 },
  gapM: { low: 0.008, high: 0.012 },
  extraBendPerM: spread,
  tips,
};
const [mm, inch] = [shopWriter({ system: 'mm' }), shopWriter({ system: 'inch' })];

test('one sentence says how often these marks beat the start, and claims nothing where there is none', () => {
  expect(surenessInWords({ blanks: 100, own, better: { ours: 'own', count: 93, of: 99 } })).toBe(
    'Your readings leave room. On 93 of 99 blanks that fit them, these marks beat the start.',
  );
  expect(surenessInWords({ blanks: 100, own, better: { ours: 'own', count: 33, of: 99 } })).toMatch(
    /^Take more readings .* only 33 of 99 blanks/,
  );
  expect(surenessInWords({ blanks: 25, own })).not.toContain('beat');
});

test('the ranges name the angle, the gap, the widest ± of the tip and the blanks that found no bend', () => {
  expect(surenessRangesInWords({ blanks: 100, own }, mm)).toBe(
    'On 95 of 100 blanks that fit your readings: the largest line angle is 14° to 17°, the largest gap 8 mm to 12 mm, the tip within ±34 mm. 99 blanks were bent (1 more found no bend).',
  );
  expect(surenessRangesInWords({ blanks: 100, own }, inch)).toContain(
    'the largest gap 5⁄16 in to 15⁄32 in, the tip within ±1 3⁄8 in',
  );
});

test('with guides on top it names how the line stands to the blank in place of the gap', () => {
  const onTop = (low: number, high: number) =>
    surenessRangesInWords({ blanks: 100, own: { ...own, intoBlankM: { low, high } } }, mm);
  expect(onTop(-0.002, -0.001)).toContain('14° to 17°, the line clears the blank, the tip');
  expect(onTop(-0.002, 0.003)).toContain('the line goes into the blank by 0 mm to 3 mm, the tip');
});

test('with no bend on any blank it claims nothing', () => {
  const none = { blanks: 100, own: { ...own, blanks: 0, unbent: 100 } };
  expect(surenessInWords(none)).toMatch(/^On none of 100/);
  expect(surenessRangesInWords(none, mm)).toBe('');
});

import { expect, test } from 'vitest';
import { surenessInWords } from './sureness-line.tsx';

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

test('the line names how often ours is better, the ranges and the widest ± of the tip', () => {
  const sureness = { blanks: 100, own, better: { ours: 'own', count: 93, of: 99 } } as const;
  expect(surenessInWords(sureness, 'mm')).toBe(
    'On 99 blanks that fit your readings (1 more found no bend): better than the start on 93 of 99 of them, the largest line angle is 14.0° to 17.0°, the largest gap 8.0 mm to 12.0 mm, the tip within ±34 mm on 95 of 100.',
  );
  expect(surenessInWords(sureness, 'inch')).toContain(
    'the largest gap 5⁄16 in to 15⁄32 in, the tip within ±1 3⁄8 in',
  );
  expect(surenessInWords({ blanks: 25, own }, 'mm')).not.toContain('better');
});

test('with no bend on any blank it claims nothing', () => {
  expect(surenessInWords({ blanks: 100, own: { ...own, blanks: 0, unbent: 100 } }, 'mm')).toMatch(
    /^On none of 100/,
  );
});

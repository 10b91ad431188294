import { expect, test } from 'vitest';
import type { RealLineAtLoad } from '../engine/layout/real-line.ts';
import { behindLastWords, contactRows, touchedWords } from './contact-rows.ts';
import { ladderWriter } from './ladder-writer.ts';
import { shopWriter } from './writer.ts';

const place = { metric: 'lineAngle' as const, load: 0, index: 1, value: 0.1, limit: 0.2, ratio: 0.5 };
const atLoad = (clearM: number[], touches: boolean[]): RealLineAtLoad => ({
  pullN: 1,
  free: place,
  rubbing: [],
  contact: {
    stretches: touches.map((one) => ({ touches: one })),
    clear: clearM.map((largestClearM, ring) => ({ fromTipM: ring, largestClearM })),
  },
});
const marks = [0.1, 0.3, 0.6];
const writer = ladderWriter(shopWriter({ system: 'mm' }), [0.1, 0.2]);

test('a span takes its least clear interval and every load that touches it', () => {
  const loads = [
    atLoad([0.15, 0.25, 0.4], [false, false, false]),
    atLoad([0.12, 0.18, 0.35], [false, true, false]),
  ];
  const rows = contactRows(loads, marks);
  expect(rows[1]).toEqual({
    span: 1,
    intervalM: expect.closeTo(0.2),
    clearM: 0.18,
    clearAtLoad: 1,
    touching: [1],
  });
  expect(touchedWords(rows, writer)).toBe(
    'Move guides closer or take higher rings between guides 1 and 2. The line lies on the blank in one span, most there, from 200 g: 200 mm apart, clear up to 180 mm.',
  );
});

test('nothing touches: it is said; a load without a bend says nothing', () => {
  const rows = contactRows(
    [atLoad([1, 1, 1], [false, false, false]), { ...atLoad([], []), contact: undefined }],
    marks,
  );
  expect(touchedWords(rows, writer)).toMatch(/nowhere, at any load/);
  expect(rows.every(({ clearAtLoad }) => clearAtLoad === 0)).toBe(true);
});

test('behind the last guide: on the blank, or how the line passes the foregrip', () => {
  const behind = (behindLast: boolean, foregripClearM?: number): RealLineAtLoad => ({
    ...atLoad([], []),
    onBlank: { status: 'converged', touched: [], behindLast, foregripClearM, clear: !behindLast },
  });
  expect(behindLastWords([behind(false), behind(true)], writer)).toBe(
    'Behind the last guide the line lies on the blank from 200 g: take a higher first guide or move it toward the butt.',
  );
  expect(behindLastWords([behind(false, 0.004), behind(false, 0.006)], writer)).toBe(
    'It clears the foregrip by 4 mm or more.',
  );
  expect(behindLastWords([behind(false, 0.004), behind(false, -0.001)], writer)).toMatch(
    /foregrip from 200 g/,
  );
  expect(behindLastWords([behind(false)], writer)).toBe('');
});

import { expect, test } from 'vitest';
import type { NextMove } from '../engine/flow/next-move.ts';
import { nextMoveInWords } from './next-move.ts';
import { shopWriter } from './writer.ts';

const degrees = Math.PI / 180;
const now = {
  metric: 'lineAngle' as const,
  load: 1,
  index: 8,
  value: 17 * degrees,
  limit: 15 * degrees,
  ratio: 17 / 15,
};
const after = { metric: 'gap' as const, load: 1, index: 3, value: 0.009, limit: 0.01, ratio: 0.9 };
const move = {
  guide: 6,
  fromM: 0.9,
  toM: 0.9 + 2 * 0.0254,
  there: { metric: 'lineAngle' as const, load: 1, index: 8, before: 17 * degrees, after: 14.5 * degrees },
  after,
};
const say = (answer: Omit<NextMove, 'now'>, system: 'inch' | 'mm') =>
  nextMoveInWords({ now, ...answer }, { count: 10, loadsKg: [0.1, 0.4] }, shopWriter({ system }));

test('the deed, why, and what it brings, in the shop’s units', () => {
  expect(say({ code: 'move', move }, 'inch')).toEqual({
    deed: 'Move guide 7 by 2 in toward the butt.',
    why: 'Guide 8 at 400 g: line angle 17° of 15°.',
    brings:
      'There it falls from 17° to 14.5°. Closest to a limit then: between guides 3 and 4, 11⁄32 in of 13⁄32 in.',
  });
  expect(say({ code: 'move', move }, 'mm').deed).toBe('Move guide 7 by 51 mm toward the butt.');
  expect(say({ code: 'more-guides', fewest: 11 }, 'mm').deed).toBe(
    'Use 11 guides: 10 do not keep your limits.',
  );
});

test('marks that are kept for want of sureness say why, and where it stands what to read', () => {
  const why = { better: 81, worse: 4, of: 100, wanted: 87, oneHold: true };
  expect(say({ code: 'keep', kept: { why, marks: 'start' } }, 'inch')).toEqual({
    deed: 'Keep the start for now, and read more first.',
    why: 'Guide 8 at 400 g: line angle 17° of 15°.',
    brings:
      'Other marks are better on 81 of 100 blanks that fit your readings. With the clamp in one place, 87 of 100 are wanted. On 4 they are worse by over 3 %. Blank says which reading would tell.',
  });
  const unread = say({ code: 'keep', kept: { why: 'unread', marks: 'neighbour' } }, 'mm');
  expect(unread.deed).toBe('Keep these marks for now, and hang a weight first.');
  const broken = say({ code: 'keep', kept: { why, marks: 'broken-start' } }, 'mm');
  expect(broken.deed).toBe('The start breaks a rule. Place the guides to mend that, and read more.');
  expect(unread.brings).toMatch(/^Nothing was read yet, and diameters do not tell/);
});

test('every answer has a deed, and none in inches a metric length', () => {
  for (const code of [
    'move',
    'place-anew',
    'more-guides',
    'beyond-limits',
    'as-even-as-it-gets',
    'keep',
    'no-bend',
  ] as const) {
    const said = Object.values(
      say({ code, move, fewest: 12, kept: { why: 'unread', marks: 'start' } }, 'inch'),
    ).join(' ');
    expect(said).toMatch(/\.$/);
    expect(said).not.toMatch(/\d mm/);
  }
});

/** Invented walls and an invented earlier picture. */
import { expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from '../../../record/document.ts';
import { curveText } from '../../../record/load-curve.ts';
import type { Change } from '../../../record/operation.ts';
import { readLoadTests } from '../../../record/read-load-tests.ts';
import type { FieldValue } from '../../../record/schema.ts';
import { knownNow } from './live-known.ts';

const by = { device: 'd', gesture: 'g', at: '2026-03-01T09:00:00Z' };
const metres = (si: number) => ({ si, text: `${si} m` });
const row = (collection: string, id: string, fields: Record<string, FieldValue>): Change[] =>
  Object.entries(fields).map(([field, value]) => ({ path: [collection, id, field], value }));
const stateOf = (kind: 'build' | 'shop', changes: Change[]) => {
  const empty = emptyDocument('x', kind);
  return applyOperations(empty, makeOperations(empty, changes, by));
};

/** Its marks `atX` metres to the right, each as high as its number. */
const wall = (id: string, numbers: readonly number[], atX: number, clampX?: number): Change[] => [
  ...row('walls', id, {
    order: atX,
    ...(clampX === undefined ? {} : { clampX: metres(clampX), clampY: metres(1) }),
  }),
  ...numbers.flatMap((number) =>
    row('wallMarks', `${id}${number}`, { wall: id, number, atX: metres(atX), atY: metres(number) }),
  ),
];
const shop = stateOf('shop', [...wall('bench', [1, 2, 3, 4], 1, 0.2), ...wall('door', [11, 12, 13, 14], 2)]);

/** Marks 1 to 4 where this picture's rectangle put them, and the curve's hold at (0.3, 0.4). */
const points = Array.from({ length: 9 }, (_, i) => ({
  xM: 0.3 + 0.1 * i,
  yM: 0.4,
  sigmaM: 0.001,
  px: [100 * i, 50] as [number, number],
}));
const untraced = [
  ...row('loadTests', 't', { order: 0, madeAt: by.at, rod: 'taped' }),
  ...row('loadPhotos', 'p', { order: 0, test: 't', part: 'whole', widthPx: 4000, heightPx: 3000 }),
  ...[1, 2, 3, 4].flatMap((number) =>
    row('photoPlaces', `m${number}`, {
      photo: 'p',
      role: 'mark',
      pxX: 9 * number,
      pxY: 5,
      number,
      atX: metres(7),
      atY: metres(number),
    }),
  ),
];
const [{ photos }] = readLoadTests(stateOf('build', untraced));
const pictured = stateOf('build', [
  ...untraced,
  ...row('traces', 'p', { photo: 'p', curve: curveText(points), madeFrom: photos[0].madeFrom }),
]);
const bare = stateOf('build', []);
const firstX = ({ wall: [first] }: ReturnType<typeof knownNow>) => first?.atM[0];

test('the wall that the marks seen belong to counts before an earlier picture’s places', () => {
  expect(firstX(knownNow(pictured, shop, [1, 2, 3, 4, 9]))).toBe(1);
  expect(knownNow(pictured, shop, [11, 12, 13, 14]).wall.map(({ number }) => number)).toEqual([
    11, 12, 13, 14,
  ]);
});

test('before any mark is seen the picture’s places count, without a picture the wall measured last', () => {
  expect(firstX(knownNow(pictured, shop, []))).toBe(7);
  expect(firstX(knownNow(bare, shop, []))).toBe(2);
  expect(knownNow(bare, stateOf('shop', []), []).wall).toEqual([]);
});

test('the hold is that of a picture before the same wall, else the one measured on the wall, else unknown', () => {
  expect(knownNow(pictured, shop, [1, 2, 3, 4]).clamp?.atM).toEqual([0.3, 0.4]);
  expect(knownNow(bare, shop, [1, 2, 3, 4]).clamp?.atM).toEqual([0.2, 1]);
  expect(knownNow(pictured, shop, [11, 12, 13, 14]).clamp).toBeUndefined();
});

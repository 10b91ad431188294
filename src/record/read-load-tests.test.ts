import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { history } from '../../test/kit/arbitrary-record.ts';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import { type CurvePoint, curveOf, curveText, mostCurvePoints, ringsOf, ringsText } from './load-curve.ts';
import type { Change } from './operation.ts';
import { lastAccepted, readLoadTests } from './read-load-tests.ts';
import { buildSchema, type FieldValue } from './schema.ts';
import { validateValue } from './validate.ts';

const points: CurvePoint[] = Array.from({ length: 1000 }, (_, i) => ({
  xM: -9.99999 + i * 0.0021,
  yM: 9.87654 - i * 1e-5,
  sigmaM: 0.0012345,
  px: [8000.123 - i, -i * 0.37],
}));

describe('a curve as text', () => {
  test('comes back to a hundredth of a millimetre and a tenth of a pixel, thinned, ends kept', () => {
    const read = curveOf(curveText(points));
    expect(read).toHaveLength(mostCurvePoints);
    for (const [at, of] of [
      [0, 0],
      [mostCurvePoints - 1, points.length - 1],
    ]) {
      expect(Math.abs(read[at].xM - points[of].xM)).toBeLessThanOrEqual(5.001e-6);
      expect(Math.abs(read[at].yM - points[of].yM)).toBeLessThanOrEqual(5.001e-6);
      expect(Math.abs(read[at].px[1] - points[of].px[1])).toBeLessThanOrEqual(0.0501);
    }
    expect(curveText(read)).toBe(curveText(points));
  });
  test('at its longest fits its field', () => {
    expect(validateValue('build', ['traces', 't', 'curve'], curveText(points))).toEqual([]);
  });
  test('that makes no sense gives no point', () => {
    for (const text of [undefined, '', '1 2', '1 2 3 4 five', '1 2 3 4 5;x'])
      expect(curveOf(text)).toEqual([]);
  });
  test('of rings keeps their guides', () => {
    const rings = [
      { ...points[3], guide: 'g1' },
      { ...points[4], guide: undefined },
    ];
    expect(ringsOf(ringsText(rings)).map(({ guide }) => guide)).toEqual(['g1', undefined]);
  });
});

const by = { device: 'd', gesture: 'g', at: '2026-03-01T09:00:00Z' };
const row = (collection: string, id: string, fields: Record<string, FieldValue>): Change[] =>
  Object.entries(fields).map(([field, value]) => ({ path: [collection, id, field], value }));
const stateOf = (...changes: Change[][]) =>
  changes.reduce(
    (state, some) => applyOperations(state, makeOperations(state, some, by)),
    emptyDocument('b', 'build'),
  );

const test1: Change[] = [
  ...row('attachments', 'a', { content: 'a'.repeat(64), name: 'photo.jpg', type: 'image/jpeg' }),
  ...row('loadTests', 't', { order: 1, madeAt: by.at, hung: { si: 0.1, text: '100 g' }, rod: 'bare' }),
  ...row('loadPhotos', 'p', { order: 1, test: 't', attachment: 'a', widthPx: 4000, heightPx: 3000 }),
  ...row('photoPlaces', 'm', { photo: 'p', role: 'mark', pxX: 10, pxY: 20, number: 3 }),
];

test('a test is read with its picture, places and curve; a moved place puts the curve out of date', () => {
  const before = stateOf(test1);
  const [{ photos }] = readLoadTests(before);
  expect(photos[0]).toMatchObject({
    hash: 'a'.repeat(64),
    places: [{ role: 'mark', px: [10, 20], number: 3 }],
  });
  const traced = row('traces', 'p', {
    photo: 'p',
    madeFrom: photos[0].madeFrom,
    curve: curveText(points.slice(0, 5)),
  });
  const made = readLoadTests(stateOf(test1, traced))[0].photos[0].trace;
  expect(made).toMatchObject({ outOfDate: false });
  expect(made?.points).toHaveLength(5);
  const moved = row('photoPlaces', 'm', { pxX: 11 });
  expect(readLoadTests(stateOf(test1, traced, moved))[0].photos[0].trace?.outOfDate).toBe(true);
});

test('the last accepted test is the one accepted last, not the one made last', () => {
  const tests = readLoadTests(
    stateOf(
      row('loadTests', 'x', { order: 1, accepted: true, acceptedAt: '2026-03-03T00:00:00Z' }),
      row('loadTests', 'y', { order: 2, accepted: true, acceptedAt: '2026-03-02T00:00:00Z' }),
      row('loadTests', 'z', { order: 3 }),
    ),
  );
  expect(lastAccepted(tests)?.id).toBe('x');
  expect(lastAccepted([])).toBeUndefined();
});

test('no state whatever makes it throw', () => {
  const collections = ['loadTests', 'loadPhotos', 'photoPlaces', 'photoDistances', 'traces'];
  expect(collections.every((name) => name in buildSchema)).toBe(true);
  fc.assert(
    fc.property(history, (log) => {
      expect(Array.isArray(readLoadTests(applyOperations(emptyDocument('b', 'build'), log)))).toBe(true);
    }),
    { seed: 4, numRuns: 100 },
  );
});

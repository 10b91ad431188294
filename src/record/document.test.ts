import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { change, history } from '../../test/kit/arbitrary-record.ts';
import { applyOperations, emptyDocument, makeOperations, rows, singleRow, valueAt } from './document.ts';
import { makeId } from './identity.ts';
import type { Operation } from './operation.ts';

const empty = emptyDocument('b', 'build');

/** The order given by random numbers, one for each operation. */
function shuffled(log: readonly Operation[], keys: readonly number[]): Operation[] {
  return log
    .map((operation, index) => ({ operation, key: keys[index % keys.length] * (index + 1) }))
    .sort((a, b) => (a.key % 1) - (b.key % 1))
    .map(({ operation }) => operation);
}
const keys = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 5, maxLength: 40 });

function asPlain(state: { cells: ReadonlyMap<string, unknown>; clock: number }) {
  return { cells: Object.fromEntries(state.cells), clock: state.clock };
}

describe('applying operations', () => {
  test('any order, in any portions, gives the same state', () => {
    fc.assert(
      fc.property(history, keys, fc.nat(30), (log, order, cut) => {
        const other = shuffled(log, order);
        const inPortions = applyOperations(applyOperations(empty, other.slice(0, cut)), other.slice(cut));
        expect(asPlain(inPortions)).toEqual(asPlain(applyOperations(empty, log)));
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  test('a second time changes nothing, and gives the very same state', () => {
    fc.assert(
      fc.property(history, (log) => {
        const once = applyOperations(empty, log);
        expect(applyOperations(once, log)).toBe(once);
      }),
      { seed: 2, numRuns: 100 },
    );
  });

  test('leaves the given state as it was', () => {
    fc.assert(
      fc.property(history, history, (first, second) => {
        const state = applyOperations(empty, first);
        const before = structuredClone(asPlain(state));
        applyOperations(state, second);
        expect(asPlain(state)).toEqual(before);
      }),
      { seed: 3, numRuns: 50 },
    );
  });

  test('rows kept from an earlier state equal rows read afresh', () => {
    fc.assert(
      fc.property(history, history, (first, second) => {
        const state = applyOperations(empty, first);
        for (const collection of ['sections', 'guides', 'readings']) rows(state, collection);
        const later = applyOperations(state, second);
        const afresh = { ...later };
        for (const collection of ['sections', 'guides', 'readings'])
          expect(rows(later, collection)).toEqual(rows(afresh, collection));
      }),
      { seed: 4, numRuns: 100 },
    );
  });
});

describe('making operations', () => {
  const by = { device: 'd-a', gesture: 'g.1', at: '2026-03-01T09:00:00Z' };

  test('what is written stands afterwards, whatever stood before', () => {
    fc.assert(
      fc.property(history, change, (log, { path, value }) => {
        const state = applyOperations(empty, log);
        const after = applyOperations(state, makeOperations(state, [{ path, value }], by));
        expect(JSON.stringify(valueAt(after, path))).toBe(JSON.stringify(value));
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  test('writing what stands already makes no operation', () => {
    const changes = [{ path: ['sections', 's1', 'length'] as const, value: { si: 0.7, text: '70 cm' } }];
    const state = applyOperations(empty, makeOperations(empty, changes, by));
    expect(makeOperations(state, changes, by)).toEqual([]);
  });

  test('two values for one path in one gesture make one operation, of the last', () => {
    const path = ['about', '-', 'title'] as const;
    const made = makeOperations(
      empty,
      [
        { path, value: 'a' },
        { path, value: 'b' },
      ],
      by,
    );
    expect(made).toMatchObject([{ id: 'd-a.1.0', old: null, value: 'b' }]);
  });
});

describe('rows', () => {
  const write = (...changes: Parameters<typeof makeOperations>[1][number][]) =>
    applyOperations(empty, makeOperations(empty, changes, { device: 'd-a', gesture: 'g.1', at: '' }));

  test('come by order, then id; those without an order last', () => {
    const state = write(
      { path: ['sections', 'b', 'order'], value: 2 },
      { path: ['sections', 'z', 'order'], value: 1 },
      { path: ['sections', 'a', 'order'], value: 2 },
      { path: ['sections', 'n', 'name'], value: 'no order' },
    );
    expect(rows(state, 'sections').map((row) => row.id)).toEqual(['z', 'a', 'b', 'n']);
  });

  test('put away, or with every field cleared, are not shown', () => {
    const state = write(
      { path: ['sections', 'a', 'order'], value: 1 },
      { path: ['sections', 'b', 'order'], value: 2 },
      { path: ['sections', 'b', 'gone'], value: true },
    );
    const cleared = applyOperations(
      state,
      makeOperations(state, [{ path: ['sections', 'a', 'order'], value: null }], {
        device: 'd-a',
        gesture: 'g.2',
        at: '',
      }),
    );
    expect(rows(state, 'sections').map((row) => row.id)).toEqual(['a']);
    expect(rows(cleared, 'sections')).toEqual([]);
  });

  test('a collection of one row answers even when nothing was written', () => {
    expect(singleRow(empty, 'about')).toEqual({ id: '-', fields: {} });
  });
});

test('ids need nothing but random bytes, and are valid row ids', () => {
  const bytes = (fill: Uint8Array<ArrayBuffer>) => fill.map((_, index) => (index * 37 + 11) & 255);
  expect(makeId(bytes)).toMatch(/^[a-z0-9_]{12}$/);
  expect(makeId(bytes, 6)).toHaveLength(6);
});

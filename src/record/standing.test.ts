import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { history } from '../../test/kit/arbitrary-record.ts';
import { chooseDeed, openConflicts } from './conflicts.ts';
import { applyOperations, emptyDocument } from './document.ts';
import { compareStamps, type Operation, type StoredOperation } from './operation.ts';
import { nothingStanding, standingAfter, stateOf } from './standing.ts';

const numbered = (log: readonly Operation[]): StoredOperation[] =>
  log.map((operation, index) => ({ ...operation, seq: index + 1, receivedAt: operation.at }));

const replayed = (log: readonly Operation[]) => applyOperations(emptyDocument('b', 'build'), log);

/** Three devices at two fields, seldom knowing of each other. */
const quarrel = fc
  .array(
    fc.record({
      device: fc.constantFrom('d1-a', 'd1-b', 'd2-a', 'd3-a'),
      field: fc.constantFrom('title', 'note'),
      old: fc.constantFrom('a', 'b', 'c'),
      value: fc.constantFrom('a', 'b', 'c'),
      chosen: fc.boolean(),
    }),
    { minLength: 2, maxLength: 12 },
  )
  .map((written) =>
    written.map(({ device, field, old, value, chosen }, index): Operation => {
      const gesture = chosen && index % 5 === 4 ? `${chooseDeed}.${index}` : `g${index}`;
      const path = ['about', '-', field] as const;
      return { id: `${device}.${index}.0`, device, clock: index, gesture, path, old, value, at: '' };
    }),
  );

/** A history in its own order or any other, and where it is cut. */
const cutHistory = fc.oneof(history, quarrel).chain((log) =>
  fc.record({
    log: fc.oneof(fc.constant(log), fc.shuffledSubarray(log, { minLength: log.length })).map(numbered),
    cuts: fc.array(fc.nat(log.length), { minLength: 1, maxLength: 4 }),
  }),
);

function standingOver(log: readonly StoredOperation[], cuts: readonly number[]) {
  const [last, ...before] = cuts.toSorted((a, b) => b - a);
  let standing = nothingStanding;
  for (const cut of [...before.reverse(), last])
    standing = standingAfter(standing, log.slice(standing.seq, cut));
  return standing;
}

describe('what stands after a part of a history', () => {
  test('gives, with what follows, the state of the whole: any history, any order of arrival, cut anywhere', () => {
    fc.assert(
      fc.property(cutHistory, ({ log, cuts }) => {
        const standing = standingOver(log, cuts);
        const state = stateOf(standing, 'b', 'build');
        expect(state).toEqual(replayed(log.slice(0, standing.seq)));
        const whole = applyOperations(state, log.slice(standing.seq));
        expect({ cells: whole.cells, clock: whole.clock }).toEqual({
          cells: replayed(log).cells,
          clock: replayed(log).clock,
        });
      }),
      { numRuns: 500 },
    );
  });

  test('leaves the same conflicts open, where what follows was written later', () => {
    fc.assert(
      fc.property(quarrel, fc.nat(20), (log, cut) => {
        const inOrder = numbered(log.toSorted(compareStamps));
        const { operations, seq } = standingOver(inOrder, [Math.min(cut, log.length)]);
        const byPath = (conflicts: ReturnType<typeof openConflicts>) =>
          new Map(conflicts.map((conflict) => [conflict.path.join('/'), conflict]));
        expect(byPath(openConflicts([...operations, ...inOrder.slice(seq)]))).toEqual(
          byPath(openConflicts(inOrder)),
        );
      }),
      { numRuns: 2000 },
    );
  });

  test('is at most three operations a path, however long the history', () => {
    const log = numbered(
      Array.from({ length: 3000 }, (_, index): Operation => {
        const device = `d${index % 3}-a`;
        const path = ['readings', `r${index % 7}`, 'note'] as const;
        const id = `${device}.${index + 1}.0`;
        const gesture = `g${index}`;
        return { id, device, clock: index + 1, gesture, path, old: null, value: `${index}`, at: '' };
      }),
    );
    const standing = standingOver(log, [1000, 2000, 3000]);
    expect(standing.operations.length).toBeGreaterThanOrEqual(7);
    expect(standing.operations.length).toBeLessThanOrEqual(21);
  });
});

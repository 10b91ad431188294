import fc from 'fast-check';
import { expect, test } from 'vitest';
import { history } from '../../test/kit/arbitrary-record.ts';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { DocumentState } from './operation.ts';
import { changesBackTo, pastGestures, stateAfter } from './past.ts';

const valuesOf = (state: DocumentState) =>
  Object.fromEntries(
    [...state.cells]
      .filter(
        ([key, { value }]) => value !== null && !key.startsWith('prints/') && key !== 'about/-/createdAt',
      )
      .map(([key, { value }]) => [key, value]),
  );

test('any earlier state can be brought back, by one gesture that keeps all that came after in the history', () => {
  fc.assert(
    fc.property(history, fc.nat(), (log, pick) => {
      const past = pastGestures(log);
      const upTo = past.length === 0 ? 0 : past[pick % past.length].upTo;
      const now = applyOperations(emptyDocument('past', 'build'), log);
      const then = stateAfter(log, upTo, 'build');
      const by = { device: 'd9-z', gesture: 'bring back', at: '2026-03-01T09:00:00Z' };
      const back = makeOperations(now, changesBackTo(then, now), by);
      expect(valuesOf(applyOperations(now, back))).toEqual(valuesOf(then));
      const later = makeOperations(
        applyOperations(now, back),
        back.map(({ path, old }) => ({ path, value: old })),
        { ...by, gesture: 'undo' },
      );
      expect(valuesOf(applyOperations(applyOperations(now, back), later))).toEqual(valuesOf(now));
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('the gestures hold every operation once, in order', () => {
  fc.assert(
    fc.property(history, (log) => {
      const past = pastGestures(log);
      expect(past.flatMap(({ changes }) => changes)).toEqual(log);
      expect(past.at(-1)?.upTo ?? 0).toBe(log.length);
    }),
    { seed: 8, numRuns: 100 },
  );
});

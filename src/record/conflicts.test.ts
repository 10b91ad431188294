import { describe, expect, test } from 'vitest';
import { chooseDeed, chosenOperation, openConflicts } from './conflicts.ts';
import { applyOperations, emptyDocument } from './document.ts';
import type { Operation } from './operation.ts';

const at = '2026-03-01T09:00:00Z';
const write = (device: string, clock: number, old: string | null, value: string): Operation => ({
  id: `${device}.${clock}.0`,
  device,
  clock,
  gesture: `g.${device}${clock}`,
  path: ['about', '-', 'title'],
  old,
  value,
  at,
});
const values = (log: Operation[]) =>
  openConflicts(log).map(({ standing, other }) => [standing.value, other.value]);

describe('a conflict', () => {
  test('is one where neither writer had seen the other’s value, in whatever order they arrive', () => {
    const log = [write('a-1', 5, null, 'bench'), write('b-1', 5, null, 'office')];
    expect(values(log)).toEqual([['office', 'bench']]);
    expect(values(log.toReversed())).toEqual([['office', 'bench']]);
  });

  test('stays open while one of the two goes on writing, and while pages are loaded anew', () => {
    const log = [
      write('a-1', 5, null, 'bench'),
      write('b-1', 5, null, 'office'),
      write('b-2', 6, 'office', 'office 2'),
    ];
    expect(values(log)).toEqual([['office 2', 'bench']]);
  });

  test('is none where the second had seen the first, where both say the same, or in one device’s two tabs', () => {
    expect(values([write('a-1', 5, null, 'one'), write('b-1', 6, 'one', 'two')])).toEqual([]);
    expect(values([write('a-1', 5, null, 'one'), write('b-1', 5, null, 'one')])).toEqual([]);
    expect(values([write('a-1', 5, null, 'one'), write('a-2', 5, null, 'two')])).toEqual([]);
  });

  test.each(['bench', 'office'])('is settled by choosing “%s”, for everybody', (chosen) => {
    const log = [write('a-1', 5, null, 'bench'), write('b-1', 5, null, 'office')];
    const state = applyOperations(emptyDocument('d', 'build'), log);
    const by = { device: 'b-3', gesture: `${chooseDeed}.x`, at };
    const settled = [...log, chosenOperation(state, ['about', '-', 'title'], chosen, by)];
    expect(values(settled)).toEqual([]);
    expect(applyOperations(emptyDocument('d', 'build'), settled).cells.get('about/-/title')?.value).toBe(
      chosen,
    );
  });

  test('is settled by who saw both and wrote a third', () => {
    const log = [
      write('a-1', 5, null, 'bench'),
      write('b-1', 5, null, 'office'),
      write('a-1', 6, 'office', 'third'),
    ];
    expect(values(log)).toEqual([]);
  });
});

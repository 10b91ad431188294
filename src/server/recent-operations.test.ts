import { expect, test } from 'vitest';
import type { StoredOperation } from '../record/operation.ts';
import { RecentOperations } from './recent-operations.ts';

const of = (...seqs: number[]) => seqs.map((seq) => ({ seq }) as StoredOperation);
const seqs = (operations: StoredOperation[] | undefined) => operations?.map(({ seq }) => seq);

function recent(...appends: StoredOperation[][]): RecentOperations {
  const run = new RecentOperations();
  for (const append of appends) run.add(append);
  return run;
}

test('a run without gaps is handed on from any place in it', () => {
  const run = recent(of(4, 5), of(6));
  expect(seqs(run.after(3))).toEqual([4, 5, 6]);
  expect(seqs(run.after(5))).toEqual([6]);
  expect(seqs(run.after(6))).toEqual([]);
});

test('what is not here is left to the database', () => {
  expect(recent().after(0)).toBeUndefined();
  expect(recent(of(4)).after(2)).toBeUndefined();
});

test('where another process wrote in between, nobody is led over the gap', () => {
  const run = recent(of(4), of(6));
  expect(run.after(3)).toBeUndefined();
  expect(run.after(4)).toBeUndefined();
  expect(seqs(run.after(5))).toEqual([6]);
});

test('two appends that end in the other order hide neither', () => {
  const run = recent(of(4), of(6), of(5));
  expect(run.after(4)).toBeUndefined();
  expect(seqs(run.after(5))).toEqual([6]);
  run.add(of(7));
  expect(seqs(run.after(5))).toEqual([6, 7]);
});

test('only so many are kept', () => {
  const run = recent(...Array.from({ length: 1000 }, (_, index) => of(index + 1)));
  expect(seqs(run.after(990))).toEqual([991, 992, 993, 994, 995, 996, 997, 998, 999, 1000]);
  expect(run.after(700)).toBeUndefined();
});

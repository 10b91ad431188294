import { expect, test } from 'vitest';
import { nextPiece } from './next-piece.ts';

const tasks = [{ id: 'ream' }, { id: 'glue', gate: true }, { id: 'mark-1' }, { id: 'mark-2' }];
const done = (...ids: string[]) => new Set(ids);

test('on arrival the first open piece that is ticked here', () => {
  expect(nextPiece(tasks, done())).toBe(0);
  expect(nextPiece(tasks, done('ream'))).toBe(2);
});

test('after a piece the next open one, a gate on the way too', () => {
  expect(nextPiece(tasks, done(), 1)).toBe(1);
  expect(nextPiece(tasks, done('mark-1'), 2)).toBe(3);
});

test('behind the last piece, what was skipped comes again; not the one just ticked', () => {
  expect(nextPiece(tasks, done('ream'), 4)).toBe(2);
  expect(nextPiece(tasks, done('ream', 'mark-1'), 4)).toBe(4);
});

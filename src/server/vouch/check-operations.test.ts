import { describe, expect, test } from 'vitest';
import { checkOperations } from './check-operations.ts';
import { linked, noLink, type OperationRow } from './seals.ts';

function history(count: number, device = 'd1-a'): OperationRow[] {
  const rows = Array.from({ length: count }, (_, index) => ({
    document: 'b1',
    seq: index + 1,
    id: `${device}.${index + 1}.0`,
    device,
    clock: index + 1,
    gesture: `g${index + 1}`,
    collection: 'about',
    row_id: '-',
    field: 'title',
    old_value: 'null',
    new_value: JSON.stringify(`title ${index + 1}`),
    written_at: '2026-03-01T09:00:00.000Z',
    received_at: '2026-03-01T09:00:01.000Z',
  }));
  return linked(rows, noLink);
}

const from = (rows: readonly OperationRow[], lastSeq: number, head: string) =>
  checkOperations(rows, { link: noLink, seq: 0, end: { head, lastSeq } });

describe('the end of a log', () => {
  const rows = history(5);

  test('is good where it is the one the document names', () => {
    const { good, bad } = from(rows, 5, rows[4].link);
    expect(good.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5]);
    expect(bad).toEqual([]);
  });

  test('that was cut off is named by the numbers that are missing', () => {
    expect(from(rows.slice(0, 3), 5, rows[4].link).bad).toEqual([4, 5]);
  });

  test('that belongs to another log is found, though every link of it holds', () => {
    const other = history(5, 'd2-b');
    expect(checkOperations(other).bad).toEqual([]);
    expect(from(other, 5, rows[4].link).bad).toEqual([5]);
  });

  test('is found where the document stands at an earlier one: its own row was put back', () => {
    expect(from(rows, 3, rows[2].link).bad).toEqual([5]);
  });

  test('of a document all of whose changes are gone is missing whole', () => {
    expect(from([], 2, rows[1].link).bad).toEqual([1, 2]);
  });

  test('of no changes at all, where the document names one, is found', () => {
    expect(from([], 0, rows[1].link).bad).toEqual([0]);
  });
});

test('one damaged change is one bad number, wherever it stands', () => {
  const rows = history(4);
  for (const at of [0, 1, 2, 3]) {
    const turned = rows.map((row, index) => (index === at ? { ...row, new_value: '"other"' } : row));
    const { good, bad } = from(turned, 4, rows[3].link);
    expect(bad).toEqual([at + 1]);
    expect(good).toHaveLength(3);
  }
});

import { Kysely, SqliteDialect } from 'kysely';
import { expect, test } from 'vitest';
import { openSqlite } from '../sqlite.ts';
import type { Tables } from '../tables.ts';
import { record } from './0001-record.ts';
import { shelf } from './0003-shelf.ts';

test('a shelf of before is found by what cards now say, whatever its history overwrote', async () => {
  const db = new Kysely<Tables>({
    dialect: new SqliteDialect({ database: openSqlite(':memory:').database }),
  });
  await record.up(db);
  const at = '2026-03-01T09:00:00.000Z';
  const times = { created_at: at, updated_at: at };
  const texts = { title: 'Rod', customer: '', rod_kind: '', line_weight: '', search: 'rod' };
  // As the first release wrote it: without the columns that come now.
  const before = { id: 'b', kind: 'build', ...texts, demo: 0, gone: 0, ...times, last_seq: 3, clock: 3 };
  await db
    .insertInto('documents')
    .values(before as never)
    .execute();
  const operation = (seq: number, collection: string, row_id: string, field: string, value: string) => ({
    document: 'b',
    seq,
    id: `d.${seq}.0`,
    device: 'd',
    clock: seq,
    gesture: 'g',
    collection,
    row_id,
    field,
    old_value: 'null',
    new_value: JSON.stringify(value),
    written_at: at,
    received_at: at,
  });
  const operations = [
    operation(1, 'about', '-', 'title', 'Rod'),
    operation(2, 'blank', '-', 'label', 'first label'),
    operation(3, 'blank', '-', 'label', 'Invented 7-96'),
  ];
  await db.insertInto('operations').values(operations).execute();
  await shelf.up(db);
  const found = await db.selectFrom('documents').selectAll().executeTakeFirstOrThrow();
  expect(JSON.parse(found.card)).toEqual({ label: 'Invented 7-96' });
  expect(found.search).toContain('invented 7-96');
  expect(found.search).not.toContain('first label');
  expect(found.series).toBe('');
  await db.destroy();
});

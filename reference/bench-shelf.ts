import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { applyOperations, emptyDocument, makeOperations } from '../src/record/document.ts';
import type { Change } from '../src/record/operation.ts';
import { openDatabase } from '../src/server/database.ts';
import { SqlRepository } from '../src/server/sql-repository.ts';
import { summaryColumns } from '../src/server/summary.ts';
import { seededRandom } from '../test/kit/server-process.ts';

export const shelfSize = 10_000;
/** What one statement of SQLite may hold of rows like these. */
const rowsAtOnce = 500;

export interface ShelfTimes {
  /** Median milliseconds of one page of fifty, each with the count of all that match. */
  list: number;
  search: number;
  searchForNothing: number;
}

/** A shelf of 10,000 invented builds in a SQLite file: the first page, and searches by title, customer, tag and line. */
export async function timeShelf(times: number): Promise<ShelfTimes> {
  const folder = mkdtempSync(join(tmpdir(), 'fairbend-shelf-'));
  const { db } = await openDatabase(join(folder, 'shelf.sqlite'));
  const repository = new SqlRepository(db);
  try {
    for (let start = 0; start < shelfSize; start += rowsAtOnce)
      await db
        .insertInto('documents')
        .values(Array.from({ length: rowsAtOnce }, (_, index) => inventedRow(start + index)))
        .execute();
    const page = { kind: 'build', gone: false, limit: 50, offset: 0 } as const;
    const median = async (search: string) => {
      const taken: number[] = [];
      for (let time = 0; time < times; time++) {
        const started = performance.now();
        await repository.list({ ...page, search });
        taken.push(performance.now() - started);
      }
      return taken.sort((a, b) => a - b)[Math.floor(times / 2)];
    };
    return {
      list: await median(''),
      search: await median('river smallmouth #7'),
      searchForNothing: await median('xylophone'),
    };
  } finally {
    await db.destroy();
    rmSync(folder, { recursive: true, force: true });
  }
}

function inventedRow(number: number) {
  const random = seededRandom(number);
  const one = (of: readonly string[]) => of[Math.floor(random() * of.length)];
  const changes: Change[] = [
    { path: ['about', '-', 'title'], value: `${one(['Brook', 'River', 'Lake', 'Coast'])} rod ${number}` },
    { path: ['about', '-', 'customer'], value: `Invented customer ${Math.floor(random() * 900)}` },
    { path: ['about', '-', 'lineWeight'], value: `#${1 + Math.floor(random() * 12)}` },
    {
      path: ['about', '-', 'note'],
      value: 'An invented note on an invented rod. '.repeat(1 + (number % 20)),
    },
    { path: ['tags', 't1', 'text'], value: one(['trout', 'smallmouth', 'salmon', 'pike']) },
  ];
  const id = `invented${number}`;
  const at = new Date(Date.UTC(2026, 0, 1) + number * 60_000).toISOString();
  const empty = emptyDocument(id, 'build');
  const state = applyOperations(empty, makeOperations(empty, changes, { device: 'd1-a', gesture: 'g', at }));
  const counters = { created_at: at, updated_at: at, last_seq: changes.length, clock: 1 };
  return { id, kind: 'build', ...summaryColumns(state), ...counters };
}

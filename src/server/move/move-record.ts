import { createHash } from 'node:crypto';
import type { Kysely, Transaction } from 'kysely';
import type { Tables } from '../tables.ts';
import { MoveRefused, openPlace } from './place.ts';

export interface Moved {
  documents: number;
  operations: number;
  attachments: number;
  revisions: number;
  /** Devices that stay paired. */
  sessions: number;
}

/** Rows read and written at a time; both databases limit the values of one statement. */
const rowsAtOnce = 500;

/**
 * Copies a whole record, history and attachments with it, from one database to an empty one: a data folder, or a
 * postgres:// address. No server may use either meanwhile. All of it arrives, and is read back equal, or nothing.
 * What stands at `from` is left as it is.
 * @throws MoveRefused, DatabaseTrouble
 */
export async function moveRecord(from: string, to: string, now: Date): Promise<Moved> {
  const source = await openPlace(from, { mustExist: true, now });
  try {
    const target = await openPlace(to, { mustExist: false, now });
    try {
      await refuseFull(target.db, target.name);
      const moved = await target.db.transaction().execute((trx) => copyAll(source.db, trx));
      const sessions = await source.sessions();
      await target.takeSessions(sessions);
      return { ...moved, sessions: sessions.length };
    } finally {
      await target.close();
    }
  } finally {
    await source.close();
  }
}

async function refuseFull(db: Kysely<Tables>, name: string): Promise<void> {
  const documents = await countOf(db, 'documents');
  if (documents === 0) return;
  throw new MoveRefused(
    `${name} holds ${documents} documents already, and a move would mix two records. Give an empty database or folder`,
  );
}

async function copyAll(
  source: Kysely<Tables>,
  target: Transaction<Tables>,
): Promise<Omit<Moved, 'sessions'>> {
  // Which record it is moves with it: unsent edits in browsers then still find it.
  const identity = await source.selectFrom('identity').selectAll().executeTakeFirstOrThrow();
  await target.deleteFrom('identity').execute();
  await target.insertInto('identity').values(identity).execute();
  const moved = { documents: 0, operations: 0, attachments: 0, revisions: 0 };
  for (const table of tables) {
    const sent = createHash('sha256');
    for await (const rows of batches(source, table)) {
      for (const row of rows) sent.update(lineOf(row));
      moved[table] += rows.length;
      await target
        .insertInto(table)
        .values(rows as never)
        .execute();
    }
    const arrived = createHash('sha256');
    for await (const rows of batches(target, table)) for (const row of rows) arrived.update(lineOf(row));
    if (sent.digest('hex') !== arrived.digest('hex'))
      throw new MoveRefused(`The ${table} did not arrive as they were sent; nothing was moved. Try again`);
  }
  return moved;
}

type Table = 'documents' | 'operations' | 'attachments' | 'revisions';
/** A row follows those it refers to. */
const tables: readonly Table[] = ['documents', 'operations', 'attachments', 'revisions'];

type Row = Record<string, unknown>;

/** All rows in one order that both databases know: documents by id, and within each by number or name. */
async function* batches(db: Kysely<Tables>, table: Table): AsyncGenerator<Row[]> {
  if (table === 'documents') yield* pages(db, table, 'id', rowsAtOnce);
  // One at a time: they are as large as pictures.
  else if (table === 'attachments') yield* pages(db, table, 'hash', 1);
  else
    for await (const documents of pages(db, 'documents', 'id', rowsAtOnce))
      for (const { id } of documents) yield* rowsOfDocument(db, table, id as string);
}

async function* pages(
  db: Kysely<Tables>,
  table: 'documents' | 'attachments',
  key: string,
  most: number,
): AsyncGenerator<Row[]> {
  // Names are compared here, not by the database: the two may sort letters in different orders.
  const found = (await db
    .selectFrom(table)
    .select(key as never)
    .execute()) as Record<string, string>[];
  const keys = found.map((row) => row[key]).sort();
  for (let start = 0; start < keys.length; start += most) {
    const wanted = keys.slice(start, start + most);
    const rows = (await db
      .selectFrom(table)
      .where(key as never, 'in', wanted as never)
      .selectAll()
      .execute()) as Row[];
    const byKey = new Map(rows.map((row) => [row[key], row]));
    yield wanted.map((one) => byKey.get(one)!);
  }
}

async function* rowsOfDocument(
  db: Kysely<Tables>,
  table: 'operations' | 'revisions',
  document: string,
): AsyncGenerator<Row[]> {
  if (table === 'revisions') {
    const found = await db.selectFrom(table).where('document', '=', document).selectAll().execute();
    if (found.length > 0) yield found.sort((a, b) => (a.revision < b.revision ? -1 : 1)) as unknown as Row[];
    return;
  }
  for (let after = 0; ; ) {
    const rows = await db
      .selectFrom(table)
      .where('document', '=', document)
      .where('seq', '>', after)
      .selectAll()
      .orderBy('seq')
      .limit(rowsAtOnce)
      .execute();
    if (rows.length === 0) return;
    yield rows as unknown as Row[];
    after = rows.at(-1)!.seq;
  }
}

/** A row as text that is the same from both databases: columns by name, bytes as a hash. */
function lineOf(row: Row): string {
  const entries = Object.entries(row)
    .map(([name, value]) => [name, value instanceof Uint8Array ? hashOf(value) : value] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return `${JSON.stringify(entries)}\n`;
}

function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

async function countOf(db: Kysely<Tables>, table: Table): Promise<number> {
  const { total } = await db
    .selectFrom(table)
    .select((e) => e.fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  return Number(total);
}

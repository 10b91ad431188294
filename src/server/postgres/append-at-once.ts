import type { Pool } from 'pg';
import type { Operation } from '../../record/operation.ts';
import type { Appended } from '../repository.ts';
import { furthestClockAhead } from '../sql-append.ts';
import { operationRow, storedOperation } from '../sql-rows.ts';
import { summaryCollections } from '../summary.ts';
import type { OperationsTable } from '../tables.ts';
import { contentDigest, sealLetters } from '../vouch/seals.ts';

/** Sent as one array each; the document, `seq` and the instant of arrival are the same for all. */
const columns = [
  'id',
  'device',
  'clock',
  'gesture',
  'collection',
  'row_id',
  'field',
  'old_value',
  'new_value',
  'written_at',
] as const satisfies (keyof OperationsTable)[];

const arrays = columns.map((name, index) => `$${index + 7}::${name === 'clock' ? 'bigint' : 'text'}[]`);

/** As `linkOf` and `documentSeal` make it. */
const digest = (text: string) => `left(encode(sha256(convert_to(${text}, 'UTF8')), 'hex'), ${sealLetters})`;

/**
 * Reading the document's row locks it until the statement's own commit, so `seq` counts without gaps and a reader
 * never sees a later one before an earlier. Where it finds no row (no such document, a clock too far ahead, a row
 * that does not hold), nothing is inserted; where an operation is there already, its uniqueness undoes the whole
 * statement.
 */
const statement = `
  with recursive standing as (
    select last_seq, clock, head, facts from documents
    where id = $1 and (last_seq = 0 or $4::bigint <= clock + $5::bigint)
    and seal = ${digest("facts || ' ' || updated_at || ' ' || last_seq || ' ' || clock || ' ' || head")}
    for update
  ), links(place, link) as (
    select 0, head from standing
    union all
    select place + 1, ${digest("link || ' ' || (standing.last_seq + place + 1) || ' ' || ($6::text[])[place + 1]")}
    from links, standing where place < $3::integer
  ), ended as (
    select standing.last_seq + $3::integer as last_seq, greatest(clock, $4::bigint) as clock, links.link as head, facts
    from standing, links where links.place = $3::integer
  ), renewed as (
    update documents
    set updated_at = $2, last_seq = ended.last_seq, clock = ended.clock, head = ended.head,
      seal = ${digest("ended.facts || ' ' || $2::text || ' ' || ended.last_seq || ' ' || ended.clock || ' ' || ended.head")}
    from ended where documents.id = $1
    returning documents.last_seq
  ), added as (
    insert into operations (document, received_at, seq, link, ${columns.join(', ')})
    select $1, $2, standing.last_seq + sent.place, links.link, ${columns.map((name) => `sent.${name}`).join(', ')}
    from standing, links, unnest(${arrays.join(', ')}) with ordinality as sent(${columns.join(', ')}, place)
    where links.place = sent.place
  )
  select last_seq from renewed`;

/** PostgreSQL's manual, appendix A: unique_violation. */
const alreadyThere = '23505';

/**
 * Appends new operations in one statement, one way to the database and back, durable when it resolves. Undefined
 * where more must be looked at: something sent twice, a value the list shows, a refusal to be put in words; nothing
 * was stored then.
 */
export async function appendAtOnce(
  pool: Pool,
  document: string,
  operations: readonly Operation[],
  receivedAt: string,
): Promise<Appended | undefined> {
  const distinct = new Set(operations.map(({ id }) => id)).size;
  if (distinct === 0 || distinct < operations.length) return undefined;
  if (operations.some(({ path }) => summaryCollections.includes(path[0]))) return undefined;
  const lastSeq = await insert(pool, document, operations, receivedAt);
  if (lastSeq === undefined) return undefined;
  const first = lastSeq - operations.length + 1;
  const stored = operations.map((operation, index) => storedOperation(operation, first + index, receivedAt));
  const accepted = stored.map(({ id, seq }) => ({ id, seq }));
  return { accepted, stored, lastSeq };
}

async function insert(
  pool: Pool,
  document: string,
  operations: readonly Operation[],
  receivedAt: string,
): Promise<number | undefined> {
  const rows = operations.map((operation) => operationRow(document, 0, operation, receivedAt));
  const furthest = Math.max(...operations.map(({ clock }) => clock));
  const values = [
    document,
    receivedAt,
    operations.length,
    furthest,
    furthestClockAhead,
    rows.map(contentDigest),
    ...columns.map((name) => rows.map((row) => row[name])),
  ];
  try {
    const found = await pool.query<{ last_seq: number }>({ name: 'append', text: statement, values });
    return found.rows[0]?.last_seq;
  } catch (error) {
    if ((error as { code?: string }).code === alreadyThere) return undefined;
    throw error;
  }
}

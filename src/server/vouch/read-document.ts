import type { Kysely } from 'kysely';
import type { RevisionAnswer } from '../../record/api.ts';
import type { StoredOperation } from '../../record/operation.ts';
import { type DocumentKind, documentSchemas } from '../../record/schema.ts';
import type { WholeDocument } from '../repository.ts';
import { unreadable } from '../sql-operations.ts';
import { revisionAnswer } from '../sql-rows.ts';
import type { Tables } from '../tables.ts';
import { revisionHolds } from './believed.ts';
import { checkOperations } from './check-operations.ts';
import { type DocumentRow, documentHolds, type OperationRow } from './seals.ts';

/** A document as it was found, with what of it cannot be believed. */
export interface ReadDocument {
  id: string;
  /** As the shelf calls it, damaged or not; for people only. */
  title: string;
  /** Of the document with its good operations; undefined where not even its kind is sure. */
  whole: WholeDocument | undefined;
  /** Numbers of operations that are not what was stored. */
  bad: number[];
  /** What is wrong, in words; empty where all is good. */
  faults: string[];
  /** The shelf's own row held. */
  rowHolds: boolean;
}

/** Reads all of one document and believes nothing that is not vouched for. */
export async function readDocument(db: Kysely<Tables>, row: DocumentRow): Promise<ReadDocument> {
  const { id, title, head, last_seq: lastSeq } = row;
  const rowHolds = documentHolds(row);
  const found = await operationRows(db, id, lastSeq);
  const { good, bad } = checkOperations(found, { link: '', seq: 0, end: { head, lastSeq } });
  const faults: string[] = [];
  if (bad.length > 0) faults.push(`${bad.length} of its ${lastSeq} changes are not what was stored`);
  if (!rowHolds) faults.push('what the shelf says of it is not what was stored');
  const whole = Object.hasOwn(documentSchemas, row.kind)
    ? await wholeOf(db, row, good, rowHolds, faults)
    : undefined;
  return { id, title: String(title), whole, bad, faults, rowHolds };
}

async function wholeOf(
  db: Kysely<Tables>,
  row: DocumentRow,
  history: readonly StoredOperation[],
  rowHolds: boolean,
  faults: string[],
): Promise<WholeDocument> {
  return {
    id: row.id,
    kind: row.kind as DocumentKind,
    gone: rowHolds && row.gone === 1,
    createdAt: rowHolds ? row.created_at : (history[0]?.receivedAt ?? row.created_at),
    updatedAt: rowHolds ? row.updated_at : (history.at(-1)?.receivedAt ?? row.updated_at),
    history,
    revisions: await revisionsOf(db, row.id, faults),
  };
}

async function revisionsOf(
  db: Kysely<Tables>,
  document: string,
  faults: string[],
): Promise<RevisionAnswer[]> {
  try {
    const rows = await db.selectFrom('revisions').where('document', '=', document).selectAll().execute();
    const good = rows.filter(revisionHolds);
    if (good.length < rows.length) faults.push('a printed state of it is not what was stored');
    return good.map(revisionAnswer);
  } catch (error) {
    if (!unreadable(error)) throw error;
    faults.push('its printed states cannot be read');
    return [];
  }
}

async function operationRows(db: Kysely<Tables>, id: string, lastSeq: number): Promise<OperationRow[]> {
  const rows = db.selectFrom('operations').where('document', '=', id);
  try {
    return await rows.selectAll().orderBy('seq').execute();
  } catch (error) {
    if (!unreadable(error)) throw error;
    return oneByOne(db, id, lastSeq);
  }
}

/** The last number may be what is damaged. */
const mostTried = 200_000;

/** Slow, and only for a document one of whose rows ends every other query. */
async function oneByOne(db: Kysely<Tables>, id: string, lastSeq: number): Promise<OperationRow[]> {
  const rows: OperationRow[] = [];
  for (let seq = 1; seq <= Math.min(lastSeq, mostTried); seq++) {
    try {
      const row = await db
        .selectFrom('operations')
        .where('document', '=', id)
        .where('seq', '=', seq)
        .selectAll()
        .executeTakeFirst();
      if (row) rows.push(row);
    } catch (error) {
      if (!unreadable(error)) throw error;
    }
  }
  return rows;
}

import type { Kysely } from 'kysely';
import type { Pool } from 'pg';
import type { Operation, StoredOperation } from '../../record/operation.ts';
import type { Appended } from '../repository.ts';
import { believedOperations, type RowWithEnd } from '../sql-operations.ts';
import { SqlRepository } from '../sql-repository.ts';
import type { Tables } from '../tables.ts';
import { appendAtOnce } from './append-at-once.ts';

const after = `
  select operations.*, documents.head as doc_head, documents.last_seq as doc_seq
  from operations join documents on documents.id = operations.document
  where operations.document = $1 and operations.seq >= $2 order by operations.seq limit $3`;

/** The record on PostgreSQL: what an edit costs most often goes as one prepared statement, all else as on SQLite. */
export class PostgresRepository extends SqlRepository {
  private readonly pool: Pool;

  constructor(db: Kysely<Tables>, pool: Pool) {
    super(db);
    this.pool = pool;
  }

  override async append(
    document: string,
    operations: readonly Operation[],
    receivedAt: string,
  ): Promise<Appended> {
    const appended = await appendAtOnce(this.pool, document, operations, receivedAt);
    return appended ?? super.append(document, operations, receivedAt);
  }

  override async size(): Promise<number> {
    const query = 'select pg_database_size(current_database())::text as bytes';
    const { rows } = await this.pool.query<{ bytes: string }>(query);
    return Number(rows[0].bytes);
  }

  override async operationsAfter(document: string, seq: number, limit: number): Promise<StoredOperation[]> {
    const query = { name: 'operations after', text: after, values: [document, seq, limit + 1] };
    const { rows } = await this.pool.query<RowWithEnd>(query);
    return believedOperations(document, rows, seq, limit);
  }
}

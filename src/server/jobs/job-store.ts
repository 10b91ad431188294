import type { Kysely, Selectable, Updateable } from 'kysely';
import type { JobState, JobStatus } from '../../record/record-api.ts';
import { ConflictError, NotFoundError, RefusedError } from '../errors.ts';
import { newId } from '../keeper.ts';
import type { JobsTable, Tables } from '../tables.ts';
import { jobKinds } from './job-kinds.ts';
import { mostAttempts, mostWaiting } from './jobs.ts';

/** Ended jobs that are kept to look at. */
const endedKept = 100;
const mostListed = 50;
const tooOften = `It ended its worker ${mostAttempts} times`;

/** Jobs as rows of the database, so that every server process sees the same. */
export class JobStore {
  private readonly db: Kysely<Tables>;
  private readonly now: () => string;

  constructor(db: Kysely<Tables>, now: () => string) {
    this.db = db;
    this.now = now;
  }

  async add(kind: string, input: unknown): Promise<JobStatus> {
    const known = Object.hasOwn(jobKinds, kind) ? jobKinds[kind] : undefined;
    if (!known) {
      const message = `There is no job "${kind.slice(0, 40)}". Give one of: ${Object.keys(jobKinds).join(', ')}`;
      throw new RefusedError([{ path: 'kind', message }]);
    }
    const parsed = known.input.safeParse(input);
    if (!parsed.success) {
      const [{ path, message }] = parsed.error.issues;
      throw new RefusedError([{ path: ['input', ...path].join('/'), message }]);
    }
    const { waiting } = await this.db
      .selectFrom('jobs')
      .where('state', 'in', ['waiting', 'running'])
      .select((e) => e.fn.countAll<number>().as('waiting'))
      .executeTakeFirstOrThrow();
    if (Number(waiting) >= mostWaiting)
      throw new ConflictError(`${mostWaiting} jobs wait already. Call some off, or wait until they are done`);
    const id = newId();
    const at = this.now();
    const row = {
      id,
      kind,
      input: JSON.stringify(parsed.data),
      state: 'waiting',
      created_at: at,
      updated_at: at,
    };
    await this.db.insertInto('jobs').values(row).execute();
    await this.thinOut();
    return (await this.find(id))!;
  }

  async find(id: string): Promise<JobStatus | undefined> {
    const row = await this.row(id);
    return row && statusOf(row);
  }

  /** Without what came out: that is asked for one by one. */
  async list(): Promise<JobStatus[]> {
    const newest = this.db.selectFrom('jobs').selectAll().orderBy('created_at', 'desc').orderBy('id');
    return (await newest.limit(mostListed).execute()).map((row) => statusOf({ ...row, result: null }));
  }

  /** Marks it cancelled unless it has ended. @throws NotFoundError */
  async cancel(id: string): Promise<JobStatus> {
    await this.change(id, ['waiting', 'running'], { state: 'cancelled' });
    const found = await this.find(id);
    if (!found) throw new NotFoundError('There is no such job. Load the page again');
    return found;
  }

  row(id: string): Promise<Selectable<JobsTable> | undefined> {
    return this.db.selectFrom('jobs').where('id', '=', id).selectAll().executeTakeFirst();
  }

  async oldestWaiting(): Promise<string | undefined> {
    const waiting = this.db.selectFrom('jobs').where('state', '=', 'waiting').select('id');
    return (await waiting.orderBy('created_at').orderBy('id').executeTakeFirst())?.id;
  }

  async running(): Promise<string[]> {
    const found = await this.db.selectFrom('jobs').where('state', '=', 'running').select('id').execute();
    return found.map(({ id }) => id);
  }

  /** Those that wait since `ms`; they count as looked at. */
  async strays(ms: number): Promise<string[]> {
    const at = this.now();
    const before = new Date(Date.parse(at) - ms).toISOString();
    const found = await this.db
      .updateTable('jobs')
      .set({ updated_at: at })
      .where('state', '=', 'waiting')
      .where('updated_at', '<', before)
      .returning('id')
      .execute();
    return found.map(({ id }) => id);
  }

  /** Takes it to work on; undefined when it does not wait any more, or has ended too many workers. */
  async begin(id: string): Promise<Selectable<JobsTable> | undefined> {
    const row = await this.row(id);
    if (!row) return undefined;
    if (row.attempts >= mostAttempts) {
      await this.change(id, ['waiting'], { state: 'failed', message: tooOften });
      return undefined;
    }
    const begun = { state: 'running', attempts: row.attempts + 1, done: 0 } as const;
    return (await this.change(id, ['waiting'], begun)) ? this.row(id) : undefined;
  }

  /** False when it was called off meanwhile. */
  progress(id: string, done: number, total: number, message: string): Promise<boolean> {
    return this.change(id, ['running'], { done, total, message: message.slice(0, 200) });
  }

  async isRunning(id: string): Promise<boolean> {
    return (await this.row(id))?.state === 'running';
  }

  finish(id: string, result: unknown): Promise<boolean> {
    return this.change(id, ['running'], { state: 'done', result: JSON.stringify(result), message: '' });
  }

  fail(id: string, message: string): Promise<boolean> {
    return this.change(id, ['running', 'waiting'], { state: 'failed', message: message.slice(0, 500) });
  }

  /** Back among the waiting; `counted` when its worker was ended by it, or by a kill. */
  async layDown(id: string, { counted }: { counted: boolean }): Promise<boolean> {
    const attempts = (await this.row(id))?.attempts ?? 0;
    return this.change(id, ['running'], { state: 'waiting', attempts: counted ? attempts : attempts - 1 });
  }

  private async change(id: string, from: JobState[], to: Updateable<JobsTable>): Promise<boolean> {
    const { numUpdatedRows } = await this.db
      .updateTable('jobs')
      .set({ ...to, updated_at: this.now() })
      .where('id', '=', id)
      .where('state', 'in', from)
      .executeTakeFirst();
    return Number(numUpdatedRows) > 0;
  }

  private async thinOut(): Promise<void> {
    const ended = this.db.selectFrom('jobs').where('state', 'not in', ['waiting', 'running']);
    const oldest = await ended
      .select('created_at')
      .orderBy('created_at', 'desc')
      .offset(endedKept)
      .limit(1)
      .executeTakeFirst();
    if (!oldest) return;
    await this.db
      .deleteFrom('jobs')
      .where('state', 'not in', ['waiting', 'running'])
      .where('created_at', '<=', oldest.created_at)
      .execute();
  }
}

function statusOf(row: Selectable<JobsTable>): JobStatus {
  const status: JobStatus = {
    id: row.id,
    kind: row.kind,
    subject: subjectOf(row.input),
    state: row.state as JobState,
    done: row.done,
    total: row.total,
    attempts: row.attempts,
    message: row.message,
    createdAt: row.created_at,
    updatedAt: row.updated_at,
  };
  return row.result === null ? status : { ...status, result: JSON.parse(row.result) };
}

function subjectOf(input: string): string {
  const { series } = JSON.parse(input) as { series?: unknown };
  return typeof series === 'string' ? series : '';
}

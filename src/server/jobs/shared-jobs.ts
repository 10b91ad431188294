import { createHash } from 'node:crypto';
import pg from 'pg';
import { PgBoss } from 'pg-boss';
import type { Keeper } from '../keeper.ts';
import type { JobStore } from './job-store.ts';
import { mostAttempts } from './jobs.ts';
import type { StepWorker } from './step-worker.ts';
import { StoredJobs } from './stored-jobs.ts';

const queue = 'fairbend-jobs';
/**
 * Not pg-boss's own 'pgboss': what version 10 left there, 12 does not take over. Calls in it are made anew as strays.
 */
const schema = 'fairbend_calls';
/** How often a server looks for work, and for work whose server is gone. */
const pollSeconds = 0.5;
const sweepMs = 1000;
/** A call is lost only by a kill at the very moment; called twice, a job is begun once. */
const strayMs = 60_000;
/** First key of the advisory lock a working server holds for its job; it ends with its connection. */
const workLock = 4871;

/**
 * Jobs of all server processes of one PostgreSQL database, handed out by pg-boss. Who works on a job holds an
 * advisory lock; a killed process loses it with its connection, and any other server then hands the job out anew.
 */
export class SharedJobs extends StoredJobs {
  private readonly boss: PgBoss;
  private readonly locks: pg.Pool;
  private working: Promise<void> = Promise.resolve();
  private timer: NodeJS.Timeout | undefined;

  private constructor(address: string, store: JobStore, keeper: Keeper, makeWorker?: () => StepWorker) {
    super(store, keeper, makeWorker);
    this.boss = new PgBoss({ connectionString: address, schema, max: 3, schedule: false });
    this.boss.on('error', () => undefined);
    this.locks = new pg.Pool({ connectionString: address, max: 2 });
    // As in database.ts: a connection that dies must not end the process.
    this.locks.on('error', () => undefined);
    this.locks.on('connect', (client) => void client.on('error', () => undefined));
  }

  static async open(
    address: string,
    store: JobStore,
    keeper: Keeper,
    makeWorker?: () => StepWorker,
  ): Promise<SharedJobs> {
    const jobs = new SharedJobs(address, store, keeper, makeWorker);
    await jobs.boss.start();
    await jobs.boss.createQueue(queue);
    await jobs.boss.work<{ id: string }>(queue, { pollingIntervalSeconds: pollSeconds }, async ([job]) => {
      const working = jobs.workOn(job.data.id);
      jobs.working = working.catch(() => undefined);
      await working;
    });
    jobs.timer = setInterval(() => void jobs.sweep().catch(() => undefined), sweepMs);
    jobs.timer.unref();
    return jobs;
  }

  async close(): Promise<void> {
    clearInterval(this.timer);
    this.closing.abort();
    await this.working;
    await this.boss.stop({ graceful: false, close: true }).catch(() => undefined);
    await this.locks.end();
  }

  /** The time is pg-boss's own last resort; the sweep notices a worker that is gone within a second or two. */
  protected async handOut(id: string): Promise<void> {
    await this.boss.send(queue, { id }, { retryLimit: mostAttempts, expireInSeconds: 12 * 3600 });
  }

  private async workOn(id: string): Promise<void> {
    await this.whileFree(id, async (lost) => {
      const closing = AbortSignal.any([this.closing.signal, lost]);
      await this.run(id, closing);
      if (closing.aborted && (await this.store.row(id))?.state === 'waiting') await this.handOut(id);
    });
  }

  /** Works under the job's lock; not at all where another server holds it. */
  private async whileFree(id: string, work: (lost: AbortSignal) => Promise<void>): Promise<void> {
    const client = await this.locks.connect();
    const lost = new AbortController();
    client.once('error', () => lost.abort());
    try {
      const key = [workLock, keyOf(id)];
      const { rows } = await client.query('select pg_try_advisory_lock($1, $2) as free', key);
      if (rows[0].free) await work(lost.signal);
    } finally {
      // The connection goes, and every lock of it.
      client.release(true);
    }
  }

  /** Jobs that count as running but whose lock is free lost their server; long waiting ones perhaps their call. */
  private async sweep(): Promise<void> {
    for (const id of await this.store.strays(strayMs)) await this.handOut(id);
    for (const id of await this.store.running())
      await this.whileFree(id, async () => {
        if (await this.store.layDown(id, { counted: true })) await this.handOut(id);
      });
  }
}

/** An advisory lock's key is a 32-bit number; two jobs of one key would only wait for one another. */
function keyOf(id: string): number {
  return createHash('sha256').update(id).digest().readInt32BE();
}

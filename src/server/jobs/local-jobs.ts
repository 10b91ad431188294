import type { JobStatus } from '../../record/record-api.ts';
import type { Keeper } from '../keeper.ts';
import type { JobStore } from './job-store.ts';
import type { Jobs } from './jobs.ts';
import { runJob } from './run-job.ts';
import { type StepWorker, threadWorker } from './step-worker.ts';

/** Jobs of the one server of a SQLite file: one after the other, in a thread of this process. */
export class LocalJobs implements Jobs {
  private readonly store: JobStore;
  private readonly keeper: Keeper;
  private readonly makeWorker: () => StepWorker;
  private readonly closing = new AbortController();
  private working: Promise<void> | undefined;

  constructor(store: JobStore, keeper: Keeper, makeWorker: () => StepWorker = threadWorker) {
    this.store = store;
    this.keeper = keeper;
    this.makeWorker = makeWorker;
  }

  /** Takes up what a server before left lying; what was under way when it was killed counts as tried once. */
  async takeUp(): Promise<void> {
    for (const id of await this.store.running()) await this.store.layDown(id, { counted: true });
    this.work();
  }

  async start(kind: string, input: unknown): Promise<JobStatus> {
    const status = await this.store.add(kind, input);
    this.work();
    return status;
  }

  status(id: string): Promise<JobStatus | undefined> {
    return this.store.find(id);
  }

  list(): Promise<JobStatus[]> {
    return this.store.list();
  }

  cancel(id: string): Promise<JobStatus> {
    return this.store.cancel(id);
  }

  async close(): Promise<void> {
    this.closing.abort();
    await this.working;
  }

  private work(): void {
    if (this.closing.signal.aborted) return;
    this.working ??= this.workAll().finally(() => {
      this.working = undefined;
    });
  }

  private async workAll(): Promise<void> {
    const { store, keeper, makeWorker } = this;
    try {
      while (!this.closing.signal.aborted) {
        const id = await store.oldestWaiting();
        if (id === undefined) return;
        await runJob(id, { store, keeper, makeWorker, closing: this.closing.signal });
      }
    } catch (error) {
      // A full or locked database; the next start of a job, or of the server, tries again.
      console.error(`Jobs stand still: ${(error as Error).message}`);
    }
  }
}

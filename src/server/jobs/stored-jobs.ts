import type { JobStatus } from '../../record/record-api.ts';
import type { Keeper } from '../keeper.ts';
import type { JobStore } from './job-store.ts';
import type { Jobs } from './jobs.ts';
import { runJob } from './run-job.ts';
import { type StepWorker, threadWorker } from './step-worker.ts';

/** Jobs that stand in the record's database; who works on them, and when, is the kind's own. */
export abstract class StoredJobs implements Jobs {
  protected readonly store: JobStore;
  protected readonly closing = new AbortController();
  private readonly keeper: Keeper;
  private readonly makeWorker: () => StepWorker;

  constructor(store: JobStore, keeper: Keeper, makeWorker: () => StepWorker = threadWorker) {
    this.store = store;
    this.keeper = keeper;
    this.makeWorker = makeWorker;
  }

  async start(kind: string, input: unknown): Promise<JobStatus> {
    const status = await this.store.add(kind, input);
    await this.handOut(status.id);
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

  abstract close(): Promise<void>;
  /** Somebody is to work on it. */
  protected abstract handOut(id: string): void | Promise<void>;

  protected run(id: string, closing: AbortSignal): Promise<void> {
    const { store, keeper, makeWorker } = this;
    return runJob(id, { store, keeper, makeWorker, closing });
  }
}

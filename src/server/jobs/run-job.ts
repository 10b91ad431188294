import type { Keeper } from '../keeper.ts';
import { jobKinds } from './job-kinds.ts';
import type { JobStore } from './job-store.ts';
import type { StepWorker } from './step-worker.ts';

export interface JobRun {
  store: JobStore;
  keeper: Keeper;
  makeWorker(): StepWorker;
  /** The server ends: the job is laid down for the next one. */
  closing: AbortSignal;
  /** How often it is looked whether somebody called the job off. */
  lookMs?: number;
}

/**
 * Works a job to its end, step by step; called off or closing, the step under way is ended at once. Never throws
 * for the job's own faults: these stand in its row. @throws what the database throws
 */
export async function runJob(
  id: string,
  { store, keeper, makeWorker, closing, lookMs = 300 }: JobRun,
): Promise<void> {
  const job = await store.begin(id);
  if (!job) return;
  const kind = jobKinds[job.kind];
  const worker = makeWorker();
  let calledOff = false;
  const look = setInterval(() => {
    void store.isRunning(id).then(
      (running) => {
        if (running) return;
        calledOff = true;
        void worker.end();
      },
      () => undefined,
    );
  }, lookMs);
  look.unref();
  const onClosing = () => void worker.end();
  closing.addEventListener('abort', onClosing);
  try {
    const input = JSON.parse(job.input) as never;
    const steps = kind ? await kind.steps(keeper, input) : [];
    const answers: unknown[] = [];
    for (const [index, name] of steps.entries()) {
      if (closing.aborted) break;
      const step = await kind.load(keeper, name, answers);
      if (!(await store.progress(id, index, steps.length, step?.name ?? ''))) return;
      if (step) answers.push(await worker.work(job.kind, step.data));
    }
    if (closing.aborted) return void (await store.layDown(id, { counted: false }));
    await store.progress(id, steps.length, steps.length, '');
    await store.finish(id, kind?.result(answers));
  } catch (error) {
    if (calledOff) return;
    if (closing.aborted) return void (await store.layDown(id, { counted: false }));
    await store.fail(id, (error as Error).message);
  } finally {
    clearInterval(look);
    closing.removeEventListener('abort', onClosing);
    await worker.end();
  }
}

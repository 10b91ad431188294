import { parentPort } from 'node:worker_threads';
import { workStep } from './job-work.ts';

/** The thread's side: one step at a time, an answer or the reason why not. */
parentPort!.on('message', ({ kind, data }: { kind: string; data: unknown }) => {
  try {
    parentPort!.postMessage({ answer: workStep(kind, data) });
  } catch (error) {
    parentPort!.postMessage({ reason: error instanceof Error ? error.message : String(error) });
  }
});

import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { errorAsData } from './error-data.ts';
import { tasks } from './tasks.ts';

/** The thread's side: one task, its progress, its answer or the reason why not. */
// On Linux a priority counts for the thread that sets it: who waits for an edit goes before who waits for a file.
// (Elsewhere it would count for the whole program.)
if (process.platform === 'linux') setPriority(10);
const { name, input } = workerData as { name: keyof typeof tasks; input: never };
const progressEveryMs = 100;
let told = 0;
const onProgress = (done: number, total: number) => {
  const now = performance.now();
  if (now - told < progressEveryMs) return;
  told = now;
  parentPort!.postMessage({ done, total });
};
try {
  const work = tasks[name] as (input: never, onProgress: (done: number, total: number) => void) => unknown;
  parentPort!.postMessage({ answer: await work(input, onProgress) });
} catch (error) {
  parentPort!.postMessage({ reason: errorAsData(error) });
}

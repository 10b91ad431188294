import type { FromWorker, Progress, Task, ToWorker } from './messages.ts';

/** Answers every task sent to this worker once, in order; `T` are the tasks it knows. */
export function answerTasks<T extends Task>(
  answerTo: (task: T, progress: (progress: Progress<T>) => void) => unknown,
): void {
  const page = self as unknown as {
    postMessage(message: FromWorker): void;
    onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
  };
  page.onmessage = ({ data: { id, task } }) => {
    const progress = (so: Progress<T>) =>
      page.postMessage({ id, says: 'progress', progress: so } as FromWorker);
    try {
      page.postMessage({ id, says: 'done', answer: answerTo(task as T, progress) } as FromWorker);
    } catch (error) {
      page.postMessage({
        id,
        says: 'failed',
        reason: error instanceof Error ? error.message : String(error),
      });
    }
  };
}

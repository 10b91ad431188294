import { Worker } from 'node:worker_threads';

/** Works one step after the other away from the server's own thread, which must go on answering. */
export interface StepWorker {
  /** @throws Error when the step fails or the worker was ended */
  work(kind: string, data: unknown): Promise<unknown>;
  /** Ends what it is doing. */
  end(): Promise<void>;
}

/** Most memory one thread may take before it is ended by itself, not the server. */
const mostMegabytes = 1024;

/** A thread of this process. */
export function threadWorker(): StepWorker {
  const thread = new Worker(new URL('./job-thread.js', import.meta.url), {
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: mostMegabytes },
  });
  thread.unref();
  let waiting: { resolve(answer: unknown): void; reject(error: Error): void } | undefined;
  const fail = (error: Error) => {
    waiting?.reject(error);
    waiting = undefined;
  };
  thread.on('message', ({ answer, reason }: { answer?: unknown; reason?: string }) => {
    if (reason !== undefined) return fail(new Error(reason));
    waiting?.resolve(answer);
    waiting = undefined;
  });
  thread.on('error', fail);
  thread.on('exit', () => fail(new Error('The worker ended')));
  return {
    work: (kind, data) =>
      new Promise((resolve, reject) => {
        waiting = { resolve, reject };
        thread.postMessage({ kind, data });
      }),
    end: async () => void (await thread.terminate()),
  };
}

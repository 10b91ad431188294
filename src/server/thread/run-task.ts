import { Worker } from 'node:worker_threads';
import { ConflictError } from '../errors.ts';
import { type ErrorData, errorFromData } from './error-data.ts';
import { type Tasks, tasks } from './tasks.ts';

export interface TaskOptions {
  onProgress?(done: number, total: number): void;
  /** Ends the task where it stands; what it was making is its caller's to take away. */
  signal?: AbortSignal;
}

type Input<N extends keyof Tasks> = Parameters<Tasks[N]>[0];
type Answer<N extends keyof Tasks> = ReturnType<Tasks[N]>;

/** Most memory the thread may take before it is ended by itself, not the server. */
const mostMegabytes = 1024;

const tooLarge = `This takes more than ${mostMegabytes} MB of memory; nothing was changed. Look whether it is the right file`;

/** The work was called off. */
export class CalledOff extends ConflictError {
  constructor(message = 'Called off; nothing was changed') {
    super(message);
  }
}

/** A task in a thread of its own, which goes on answering meanwhile. @throws what the task throws, CalledOff */
export function runTask<N extends keyof Tasks>(
  name: N,
  input: Input<N>,
  { onProgress = () => undefined, signal }: TaskOptions = {},
): Answer<N> {
  // Not compiled (tests): threads of this program know JavaScript alone.
  const inProcess = import.meta.url.endsWith('.ts');
  const work = inProcess
    ? tasks[name](input as never, stoppable(onProgress, signal))
    : inThread(name, input, onProgress, signal);
  return work as Answer<N>;
}

type Progress = NonNullable<TaskOptions['onProgress']>;

/** Progress that two want to hear. */
export function both(one: Progress, other: Progress): Progress {
  return (done, total) => {
    one(done, total);
    other(done, total);
  };
}

/** Without a thread to end, it ends where it next tells how far it is. */
function stoppable(onProgress: Progress, signal: AbortSignal | undefined): Progress {
  return (done: number, total: number) => {
    if (signal?.aborted) throw new CalledOff();
    onProgress(done, total);
  };
}

async function inThread(
  name: keyof Tasks,
  input: unknown,
  onProgress: (done: number, total: number) => void,
  signal: AbortSignal | undefined,
): Promise<unknown> {
  const thread = new Worker(new URL('./task-thread.js', import.meta.url), {
    execArgv: [],
    workerData: { name, input },
    resourceLimits: { maxOldGenerationSizeMb: mostMegabytes },
  });
  const end = () => void thread.terminate();
  if (signal?.aborted) end();
  signal?.addEventListener('abort', end);
  try {
    return await answerOf(thread, onProgress, signal);
  } finally {
    signal?.removeEventListener('abort', end);
    await thread.terminate();
  }
}

interface Message {
  done?: number;
  total?: number;
  answer?: unknown;
  reason?: ErrorData;
}

function answerOf<T>(
  thread: Worker,
  onProgress: (done: number, total: number) => void,
  signal: AbortSignal | undefined,
): Promise<T> {
  return new Promise((resolve, reject) => {
    thread.on('message', ({ done, total, answer, reason }: Message) => {
      if (reason) reject(errorFromData(reason));
      else if (done === undefined) resolve(answer as T);
      else onProgress(done, total ?? 0);
    });
    thread.on('error', (error: NodeJS.ErrnoException) =>
      reject(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? new ConflictError(tooLarge) : error),
    );
    thread.on('exit', () => reject(signal?.aborted ? new CalledOff() : new Error('The worker ended')));
  });
}

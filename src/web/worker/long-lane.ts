import type { Answer, FromWorker, LongTask, Progress, ToWorker } from './messages.ts';

/** What a lane needs of a Worker; a test puts its own in place. */
export interface WorkerLike {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface RunOptions<T extends LongTask> {
  signal?: AbortSignal;
  progress?: (progress: Progress<T>) => void;
}

interface Job {
  task: LongTask;
  done(answer: unknown): void;
  failed(error: Error): void;
  progress?: (progress: unknown) => void;
}

/**
 * Work of more than a frame, one piece after the other in a worker of its own. The engine never waits, so it
 * cannot hear "stop": a piece under way is stopped by ending its worker, and the next one gets a new worker.
 */
export class LongLane {
  private worker: WorkerLike | undefined;
  private running: { id: number; job: Job } | undefined;
  private readonly waiting: Job[] = [];
  private lastId = 0;
  private readonly makeWorker: () => WorkerLike;
  /** How long what changes must have stood still before its work is worth beginning. */
  readonly restMs: number;

  constructor(makeWorker: () => WorkerLike, restMs = 120) {
    this.makeWorker = makeWorker;
    this.restMs = restMs;
  }

  /** Rejects with the engine's own error, or with an AbortError once `signal` has spoken. */
  run<T extends LongTask>(task: T, { signal, progress }: RunOptions<T> = {}): Promise<Answer<T>> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(aborted());
      const job: Job = {
        task,
        done: (answer) => resolve(answer as Answer<T>),
        failed: reject,
        progress: progress as Job['progress'],
      };
      signal?.addEventListener('abort', () => this.stop(job), { once: true });
      this.waiting.push(job);
      this.next();
    });
  }

  close(): void {
    for (const job of [...this.waiting, ...(this.running ? [this.running.job] : [])]) this.stop(job);
    this.worker?.terminate();
    this.worker = undefined;
  }

  private stop(job: Job): void {
    const place = this.waiting.indexOf(job);
    if (place >= 0) this.waiting.splice(place, 1);
    else if (this.running?.job === job) this.endWorker();
    else return;
    job.failed(aborted());
    this.next();
  }

  private endWorker(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.running = undefined;
  }

  private next(): void {
    if (this.running) return;
    const job = this.waiting.shift();
    if (!job) return;
    this.running = { id: ++this.lastId, job };
    this.openWorker().postMessage({ id: this.lastId, task: job.task });
  }

  private openWorker(): WorkerLike {
    if (!this.worker) {
      this.worker = this.makeWorker();
      this.worker.onmessage = ({ data }) => this.hear(data);
      this.worker.onerror = (event) => this.broke(event);
    }
    return this.worker;
  }

  private hear(message: FromWorker): void {
    const { running } = this;
    if (!running || message.id !== running.id) return;
    if (message.says === 'progress') {
      running.job.progress?.(message.progress);
      return;
    }
    this.running = undefined;
    if (message.says === 'done') running.job.done(message.answer);
    else running.job.failed(new Error(message.reason));
    this.next();
  }

  /** The worker itself could not be loaded or died: its piece has failed, a later one may fare better. */
  private broke(event: ErrorEvent): void {
    const job = this.running?.job;
    this.endWorker();
    job?.failed(new Error(event.message || 'the calculation could not be started'));
    this.next();
  }
}

function aborted(): Error {
  return new DOMException('a newer request took its place', 'AbortError');
}

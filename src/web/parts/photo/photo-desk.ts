import type {
  FromPhotoWorker,
  PhotoAnswer,
  PhotoProgress,
  PhotoTask,
  ToPhotoWorker,
} from './photo-messages.ts';

export interface PhotoWorkerLike {
  postMessage(message: ToPhotoWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromPhotoWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface LookOptions {
  signal: AbortSignal;
  progress(progress: PhotoProgress): void;
}

/**
 * One look at a picture at a time; the newest takes the place of the one under way. The worker keeps its decoded
 * picture between looks; a look that is stopped ends the worker, which hears nothing while it works.
 */
export class PhotoDesk {
  private worker: PhotoWorkerLike | undefined;
  private underway: { id: number; stop(): void } | undefined;
  private lastId = 0;
  private readonly makeWorker: () => PhotoWorkerLike;

  constructor(makeWorker: () => PhotoWorkerLike) {
    this.makeWorker = makeWorker;
  }

  /** Rejects with the reason, or with an AbortError when stopped or overtaken. */
  look<T extends PhotoTask>(task: T, { signal, progress }: LookOptions): Promise<PhotoAnswer<T>> {
    this.underway?.stop();
    return new Promise((resolve, reject) => {
      if (signal.aborted) return reject(aborted());
      this.lastId += 1;
      const id = this.lastId;
      const worker = this.openWorker();
      const end = () => {
        signal.removeEventListener('abort', stop);
        if (this.underway?.id === id) this.underway = undefined;
      };
      const stop = () => {
        end();
        this.endWorker();
        reject(aborted());
      };
      this.underway = { id, stop };
      signal.addEventListener('abort', stop, { once: true });
      worker.onmessage = ({ data }) => {
        if (data.id !== id) return;
        if (data.says === 'progress') return progress(data.progress);
        end();
        if (data.says === 'done') resolve(data.answer as PhotoAnswer<T>);
        else reject(new Error(data.reason));
      };
      worker.onerror = (event) => {
        end();
        this.endWorker();
        reject(new Error(event.message || 'the picture could not be looked at'));
      };
      worker.postMessage({ id, task });
    });
  }

  close(): void {
    this.underway?.stop();
    this.endWorker();
  }

  private openWorker(): PhotoWorkerLike {
    this.worker ??= this.makeWorker();
    return this.worker;
  }

  private endWorker(): void {
    this.worker?.terminate();
    this.worker = undefined;
  }
}

/** A desk with a worker of this page. */
export function openPhotoDesk(): PhotoDesk {
  return new PhotoDesk(
    () =>
      new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module', name: 'fairbend photo' }),
  );
}

function aborted(): Error {
  return new DOMException('a newer look took its place', 'AbortError');
}

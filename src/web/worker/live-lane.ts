import type { RuledReading } from '../../engine/layout/rule-reading.ts';
import type { WorkerLike } from './long-lane.ts';
import type { FromWorker, LadderSheet, ReadTask } from './messages.ts';

export interface LiveAnswer {
  /** The stations that were read. */
  fromTipM: readonly number[];
  reading: RuledReading;
}
interface LiveListener {
  read(answer: LiveAnswer): void;
  failed(reason: string): void;
}

/** One layout whose readings are followed live: its latest question, and who hears the answer. */
interface Thread {
  listener: LiveListener;
  wanted: { sheet: LadderSheet; fromTipM: readonly number[] } | undefined;
  /** The sheet the worker has; it is sent only when it is another one. */
  known: LadderSheet | undefined;
}

interface Underway {
  id: number;
  thread: string;
  sheet: LadderSheet;
  fromTipM: readonly number[];
}

/**
 * Layouts read while they are dragged. Every thread (ours, the start's) has at most one question under way and
 * one waiting, always the newest: an answer is never older than one frame and its own calculation.
 */
export class LiveLane {
  private readonly threads = new Map<string, Thread>();
  private underway: Underway | undefined;
  private lastId = 0;
  private worker: WorkerLike | undefined;
  /** A worker broke and the question was put to a new one, which has not answered yet. */
  private triedAgain = false;
  private readonly makeWorker: () => WorkerLike;

  constructor(makeWorker: () => WorkerLike) {
    this.makeWorker = makeWorker;
    this.openWorker();
  }

  listen(thread: string, listener: LiveListener): () => void {
    this.threads.set(thread, { listener, wanted: undefined, known: undefined });
    return () => this.threads.delete(thread);
  }

  ask(thread: string, sheet: LadderSheet, fromTipM: readonly number[]): void {
    const asked = this.threads.get(thread);
    if (!asked) throw new Error(`nobody listens to ${thread}`);
    asked.wanted = { sheet, fromTipM };
    this.next();
  }

  close(): void {
    this.threads.clear();
    this.worker?.terminate();
  }

  private openWorker(): WorkerLike {
    if (!this.worker) {
      this.worker = this.makeWorker();
      this.worker.onmessage = ({ data }) => this.hear(data);
      this.worker.onerror = (event) => this.broke(event.message || 'the calculation could not be started');
    }
    return this.worker;
  }

  private next(): void {
    if (this.underway) return;
    for (const [name, thread] of this.threads) {
      if (!thread.wanted) continue;
      const { sheet, fromTipM } = thread.wanted;
      thread.wanted = undefined;
      const task: ReadTask = { does: 'read', thread: name, fromTipM };
      if (thread.known !== sheet) task.sheet = sheet;
      thread.known = sheet;
      this.underway = { id: ++this.lastId, thread: name, sheet, fromTipM };
      this.openWorker().postMessage({ id: this.lastId, task });
      return;
    }
  }

  private hear(message: FromWorker): void {
    const { underway } = this;
    if (!underway || message.id !== underway.id || message.says === 'progress') return;
    this.underway = undefined;
    this.triedAgain = false;
    this.next();
    const thread = this.threads.get(underway.thread);
    if (message.says === 'failed') {
      if (thread) thread.known = undefined;
      thread?.listener.failed(message.reason);
    } else {
      thread?.listener.read({ fromTipM: underway.fromTipM, reading: message.answer as RuledReading });
    }
  }

  /** A worker that could not be loaded, or died, is replaced once; then it is told, and the next question tries. */
  private broke(reason: string): void {
    const { underway } = this;
    this.worker?.terminate();
    this.worker = undefined;
    this.underway = undefined;
    for (const thread of this.threads.values()) thread.known = undefined;
    const thread = underway && this.threads.get(underway.thread);
    if (thread && !this.triedAgain) {
      this.triedAgain = true;
      thread.wanted ??= underway;
      this.next();
      return;
    }
    this.triedAgain = false;
    for (const { listener } of this.threads.values()) listener.failed(reason);
  }
}

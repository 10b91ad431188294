import type { Objection, Operation } from '../../record/operation.ts';
import { ApiError } from './api.ts';

/** What is true of the changes made here. */
export type SaveStatus =
  | { kind: 'saved' }
  | { kind: 'saving'; pending: number }
  /**
   * The server cannot be reached; the changes stand in this browser's outbox and are sent when it can. `onlyOnPage`:
   * the browser's own store did not take them, so that they end with this page.
   */
  | { kind: 'kept'; pending: number; reason: string; onlyOnPage?: true }
  /** The server will not take these; they stay in the outbox and show what is wrong. */
  | { kind: 'refused'; pending: number; findings: Objection[] };

export interface SenderOptions {
  /** Resolves when the server has the operations on disk; throws an ApiError otherwise. */
  post(operations: readonly Operation[]): Promise<unknown>;
  acknowledged(operations: readonly Operation[]): void;
  changed(): void;
  /** Waits before trying again, in ms: the first, then doubled up to the last. */
  retryFirstMs?: number;
  retryLastMs?: number;
}

/** Most operations, and characters of their JSON, in one request. */
const largestRequest = { operations: 500, characters: 1_000_000 };

/** Sends operations in the order they were made, again and again until each is acknowledged. */
export class Sender {
  private readonly options: SenderOptions;
  private waiting: Operation[] = [];
  private refused: { operations: Operation[]; findings: Objection[] }[] = [];
  private running = false;
  private failures = 0;
  private reason = '';
  /** After a refusal gestures go one by one, so that only the one at fault stays behind. */
  private oneByOne = false;
  private wake: (() => void) | undefined;
  private idle: (() => void)[] = [];

  constructor(options: SenderOptions) {
    this.options = options;
  }

  get status(): SaveStatus {
    const findings = this.refused.flatMap((entry) => entry.findings);
    const pending =
      this.waiting.length + this.refused.reduce((sum, entry) => sum + entry.operations.length, 0);
    if (this.waiting.length > 0 && this.failures > 0) return { kind: 'kept', pending, reason: this.reason };
    if (findings.length > 0) return { kind: 'refused', pending, findings };
    return pending > 0 ? { kind: 'saving', pending } : { kind: 'saved' };
  }

  /** Whether it waits here, to be sent or given up. */
  holds(id: string): boolean {
    const refused = this.refused.flatMap((entry) => entry.operations);
    return [...this.waiting, ...refused].some((operation) => operation.id === id);
  }

  enqueue(operations: readonly Operation[]): void {
    if (operations.length === 0) return;
    this.waiting.push(...operations);
    this.options.changed();
    void this.run();
  }

  /** The network is back, as far as one can tell: do not wait any longer. */
  retryNow(): void {
    this.wake?.();
  }

  /** Resolves when nothing waits any more; the refused do not count. */
  settled(): Promise<void> {
    if (this.waiting.length === 0) return Promise.resolve();
    return new Promise((resolve) => this.idle.push(resolve));
  }

  /** Gives up the refused operations and says which they were. */
  dropRefused(): Operation[] {
    const dropped = this.refused.flatMap((entry) => entry.operations);
    this.refused = [];
    this.options.changed();
    return dropped;
  }

  private async run(): Promise<void> {
    if (this.running) return;
    this.running = true;
    while (this.waiting.length > 0) await this.sendNext();
    this.running = false;
    this.oneByOne = false;
    for (const resolve of this.idle.splice(0)) resolve();
  }

  private async sendNext(): Promise<void> {
    const batch = this.nextBatch();
    try {
      await this.options.post(batch);
      this.failures = 0;
      this.waiting.splice(0, batch.length);
      this.options.acknowledged(batch);
    } catch (error) {
      const answer = error instanceof ApiError ? error : new ApiError(0, String(error));
      if (isRefusal(answer)) this.refuse(batch, answer);
      else await this.pause(answer);
    }
    this.options.changed();
  }

  private nextBatch(): Operation[] {
    const [{ gesture }] = this.waiting;
    let characters = 0;
    const end = this.waiting.findIndex((operation, index) => {
      characters += JSON.stringify(operation).length;
      if (index === 0) return false;
      if (this.oneByOne && operation.gesture !== gesture) return true;
      return index >= largestRequest.operations || characters > largestRequest.characters;
    });
    return this.waiting.slice(0, end < 0 ? undefined : end);
  }

  private refuse(batch: Operation[], error: ApiError): void {
    const oneGesture = batch.every((operation) => operation.gesture === batch[0].gesture);
    if (!oneGesture) {
      this.oneByOne = true;
      return;
    }
    const findings = error.findings.length > 0 ? error.findings : [{ path: '', message: error.message }];
    this.refused.push({ operations: this.waiting.splice(0, batch.length), findings });
  }

  private async pause(error: ApiError): Promise<void> {
    const { retryFirstMs = 500, retryLastMs = 10_000 } = this.options;
    const waitMs = Math.min(retryLastMs, retryFirstMs * 2 ** this.failures);
    this.failures += 1;
    this.reason = error.message;
    this.options.changed();
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, waitMs);
      this.wake = () => {
        clearTimeout(timer);
        resolve();
      };
    });
    this.wake = undefined;
  }
}

/** The server understood and said no; trying again would not help. Others (0, 5xx, 429, 403) may pass. */
function isRefusal(error: ApiError): boolean {
  return [400, 404, 409, 413, 422].includes(error.status);
}

import type { Operation } from '../../record/operation.ts';
import type { Outbox } from './outbox.ts';

/** What of one document waits in the browser's own store until the server has it. */
export class KeptUnsent {
  private readonly outbox: Outbox;
  /** One document of one record. */
  private readonly name: string;
  private readonly kept: () => void;
  /** Work in the order asked for: an operation is never removed before it was added. */
  private work: Promise<void> = Promise.resolve();
  private beingKept = 0;
  /** It did not take some that are still unsaved. */
  failed = false;

  /** @param kept hears that nothing is on its way into the store any more, or that it would not go */
  constructor(outbox: Outbox, name: string, kept: () => void) {
    this.outbox = outbox;
    this.name = name;
    this.kept = kept;
  }

  /** Some are on their way into it. */
  get busy(): boolean {
    return this.beingKept > 0;
  }

  list(): Promise<Operation[]> {
    return this.outbox.list(this.name);
  }

  add(operations: readonly Operation[]): void {
    this.beingKept += 1;
    this.later(async () => {
      try {
        await this.outbox.add(this.name, operations);
      } catch {
        this.failed = true;
      } finally {
        this.beingKept -= 1;
        this.kept();
      }
    });
  }

  remove(operations: readonly Operation[]): void {
    const ids = operations.map((operation) => operation.id);
    this.later(() => this.outbox.remove(this.name, ids));
  }

  /** A full or broken store must not stop the sending; the status says what is kept nowhere. */
  private later(work: () => Promise<void>): void {
    this.work = this.work.then(work).catch(() => undefined);
  }
}

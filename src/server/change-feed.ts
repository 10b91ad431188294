import type { StoredOperation } from '../record/operation.ts';
import { RecentOperations } from './recent-operations.ts';

/** `elsewhere`: something may have come that this process did not store; only the database knows it. */
export type ChangeListener = (elsewhere: boolean) => void;

/**
 * Tells who listens that a document has new operations; they take them from here, or read them from the repository.
 * Within one server process; listeners look for themselves from time to time, so what another process wrote is seen
 * as well.
 */
export class ChangeFeed {
  private readonly listeners = new Map<string, Set<ChangeListener>>();
  /** Of documents somebody listens to. */
  private readonly recent = new Map<string, RecentOperations>();

  /** @param stored what this process has just stored there, durable by now */
  publish(document: string, stored: readonly StoredOperation[]): void {
    this.recent.get(document)?.add(stored);
    this.ring(document, false);
  }

  /** Operations after `seq` that this process stored; undefined where only the repository can tell. */
  recentAfter(document: string, seq: number): StoredOperation[] | undefined {
    return this.recent.get(document)?.after(seq);
  }

  protected ring(document: string, elsewhere: boolean): void {
    for (const listener of this.listeners.get(document) ?? []) listener(elsewhere);
  }

  /** Everybody looks for himself: something may have been missed. */
  lookAll(): void {
    for (const document of this.listeners.keys()) this.ring(document, true);
  }

  /** How many documents somebody listens to. */
  get listening(): number {
    return this.listeners.size;
  }

  /** The answer ends it. */
  subscribe(document: string, listener: ChangeListener): () => void {
    const listeners = this.listeners.get(document) ?? new Set();
    this.listeners.set(document, listeners.add(listener));
    if (!this.recent.has(document)) this.recent.set(document, new RecentOperations());
    return () => {
      listeners.delete(listener);
      if (listeners.size > 0) return;
      this.listeners.delete(document);
      this.recent.delete(document);
    };
  }
}

/**
 * Tells who listens that a document has new operations; they read them from the repository. Within one server
 * process; listeners look for themselves from time to time, so what another process wrote is seen as well.
 */
export class ChangeFeed {
  private readonly listeners = new Map<string, Set<() => void>>();

  publish(document: string): void {
    this.ring(document);
  }

  protected ring(document: string): void {
    for (const listener of this.listeners.get(document) ?? []) listener();
  }

  /** Everybody looks for himself: something may have been missed. */
  publishAll(): void {
    for (const document of this.listeners.keys()) this.ring(document);
  }

  /** How many documents somebody listens to. */
  get listening(): number {
    return this.listeners.size;
  }

  /** The answer ends it. */
  subscribe(document: string, listener: () => void): () => void {
    const listeners = this.listeners.get(document) ?? new Set();
    this.listeners.set(document, listeners.add(listener));
    return () => {
      listeners.delete(listener);
      if (listeners.size === 0) this.listeners.delete(document);
    };
  }
}

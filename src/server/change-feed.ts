/**
 * Tells who listens that a document has new operations; they read them from the repository. Within one server
 * process; listeners look for themselves from time to time, so what another process wrote is seen as well.
 */
export class ChangeFeed {
  private readonly listeners = new Map<string, Set<() => void>>();

  publish(document: string): void {
    for (const listener of this.listeners.get(document) ?? []) listener();
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

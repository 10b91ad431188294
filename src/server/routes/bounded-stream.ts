import type { SSEStreamingApi } from 'hono/streaming';

/** How long a reader may take to take what is sent, and how long once the server is to close. */
const longestWriteMs = 20_000;
const closingMs = 500;

/** A feed to a reader who may never read: what he does not take in time ends it, and closes his connection. */
export class BoundedStream {
  private readonly stream: SSEStreamingApi;
  private readonly cut: () => void;
  private readonly closing: AbortSignal;
  private given = false;

  constructor(stream: SSEStreamingApi, cut: () => void, closing: AbortSignal) {
    this.stream = stream;
    this.cut = cut;
    this.closing = closing;
  }

  get aborted(): boolean {
    return this.given || this.stream.aborted;
  }

  onAbort(listener: () => void): void {
    this.stream.onAbort(listener);
  }

  send(event: string, data: unknown): Promise<void> {
    return this.within(this.stream.writeSSE({ event, data: JSON.stringify(data) }));
  }

  alive(): Promise<void> {
    return this.within(this.stream.write(': alive\n\n'));
  }

  private async within(written: Promise<unknown>): Promise<void> {
    if (this.given) return;
    let timer: NodeJS.Timeout | undefined;
    let onClosing: () => void = () => undefined;
    const late = new Promise<boolean>((resolve) => {
      const giveUpAfter = (ms: number) => {
        clearTimeout(timer);
        timer = setTimeout(() => resolve(true), ms);
      };
      onClosing = () => giveUpAfter(closingMs);
      giveUpAfter(this.closing.aborted ? closingMs : longestWriteMs);
      this.closing.addEventListener('abort', onClosing);
    });
    const isLate = await Promise.race([late, written.then(() => false)]);
    clearTimeout(timer);
    this.closing.removeEventListener('abort', onClosing);
    if (!isLate) return;
    this.given = true;
    this.cut();
  }
}

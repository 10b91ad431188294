import type { FeedMessage, FeedOpening } from '../../record/api.ts';
import type { StoredOperation } from '../../record/operation.ts';

export interface Watch {
  document: string;
  /** The last `seq` this side has. */
  after(): number;
  received(operations: readonly StoredOperation[]): void;
  /** The operation of that number, by its id; the server may have another there by now. */
  lastId?(): string;
  /** The server answers. */
  connected(): void;
  /** The server does not have what this side has had from it. */
  behind?(): void;
}

/** The part of EventSource that is used. */
export interface EventStream {
  addEventListener(type: string, listener: (event: MessageEvent<string>) => void): void;
  close(): void;
}

/**
 * Others' operations as they arrive, over one connection for all open documents of the page: a browser allows
 * six to one server. It comes back by itself, and takes up after the last operation received.
 */
export class LiveFeed {
  private readonly connect: (address: string) => EventStream;
  private readonly retryMs: number;
  private readonly watches = new Set<Watch>();
  private stream: EventStream | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private paused = false;
  private opening: FeedOpening | undefined;
  private readonly replaced: () => void;

  /** `replaced` hears that a backup, or another record, stands where the one of this page stood. */
  constructor(
    connect: (address: string) => EventStream,
    retryMs = 1000,
    replaced: () => void = () => undefined,
  ) {
    this.connect = connect;
    this.retryMs = retryMs;
    this.replaced = replaced;
  }

  /** Starts watching; the answer stops it. */
  watch(watch: Watch): () => void {
    this.watches.add(watch);
    this.reopen();
    return () => {
      this.watches.delete(watch);
      this.reopen();
    };
  }

  /** A hidden page gives its connection up; `resume` catches up. */
  pause(): void {
    this.paused = true;
    this.reopen();
  }

  resume(): void {
    if (!this.paused) return;
    this.paused = false;
    this.reopen();
  }

  /** The network is back, as far as one can tell. */
  reconnect(): void {
    this.reopen();
  }

  private reopen(): void {
    clearTimeout(this.timer);
    this.stream?.close();
    this.stream = undefined;
    if (this.paused || this.watches.size === 0) return;
    const query = [...this.watches].map(
      (watch) => `after=${encodeURIComponent(watch.document)}:${watch.after()}${idOf(watch)}`,
    );
    const stream = this.connect(`/api/events?${query.join('&')}`);
    this.stream = stream;
    stream.addEventListener('open', () => {
      for (const watch of this.watches) watch.connected();
    });
    stream.addEventListener('record', (event) => this.heardOpening(JSON.parse(event.data) as FeedOpening));
    stream.addEventListener('operations', (event) => this.deliver(JSON.parse(event.data) as FeedMessage));
    stream.addEventListener('error', () => {
      if (this.stream !== stream) return;
      stream.close();
      this.timer = setTimeout(() => this.reopen(), this.retryMs);
    });
  }

  private heardOpening({ record, restoredAt, behind = [] }: FeedOpening): void {
    const { opening } = this;
    this.opening = { record, restoredAt };
    if (opening && (opening.record !== record || opening.restoredAt !== restoredAt)) {
      this.replaced();
      return;
    }
    for (const watch of this.watches) if (behind.includes(watch.document)) watch.behind?.();
  }

  private deliver(message: FeedMessage): void {
    for (const watch of this.watches)
      if (watch.document === message.document) watch.received(message.operations);
  }
}

function idOf(watch: Watch): string {
  const id = watch.lastId?.() ?? '';
  return id === '' ? '' : `:${encodeURIComponent(id)}`;
}

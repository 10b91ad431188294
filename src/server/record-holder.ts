import { setMaxListeners } from 'node:events';
import type { IncomingMessage } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import type { HttpBindings } from '@hono/node-server';
import type { Hono } from 'hono';
import { ConflictError } from './errors.ts';
import type { OpenRecord } from './open-record.ts';

/** How long requests under way and open feeds may take to end before a restore gives way to them. */
const longestWaitMs = 10_000;
/** How long a request may go on sending its body before it is cut off: nothing of it was looked at yet. */
const bodyWaitMs = 1000;
const lookMs = 10;

interface Life {
  record: OpenRecord;
  app: Hono;
  closing: AbortController;
}

/** The open record and the app that stands on it, replaced as one while requests wait. */
export class RecordHolder {
  private readonly open: () => Promise<OpenRecord>;
  private readonly appOf: (record: OpenRecord, closing: AbortSignal) => Hono;
  private life: Life;
  /** Requests under way; of those made in this process nothing is known. */
  private readonly inFlight = new Set<{ incoming?: IncomingMessage }>();
  private replacing: Promise<unknown> | undefined;

  private constructor(
    open: () => Promise<OpenRecord>,
    appOf: (record: OpenRecord, closing: AbortSignal) => Hono,
    first: OpenRecord,
  ) {
    this.open = open;
    this.appOf = appOf;
    this.life = this.begin(first);
  }

  static async start(
    open: () => Promise<OpenRecord>,
    appOf: (record: OpenRecord, closing: AbortSignal) => Hono,
  ): Promise<RecordHolder> {
    return new RecordHolder(open, appOf, await open());
  }

  get record(): OpenRecord {
    return this.life.record;
  }

  readonly fetch = async (request: Request, env?: unknown): Promise<Response> => {
    while (this.replacing) await this.replacing.catch(() => undefined);
    const underWay = { incoming: (env as Partial<HttpBindings> | undefined)?.incoming };
    this.inFlight.add(underWay);
    try {
      return await this.life.app.fetch(request, env as never);
    } finally {
      this.inFlight.delete(underWay);
    }
  };

  /** Feeds end; requests still find their record. */
  endFeeds(): void {
    this.life.closing.abort();
  }

  async close(): Promise<void> {
    this.endFeeds();
    await this.life.record.close();
  }

  /**
   * Closes the record, lets `swap` put another in its place, opens that. Called by a request, which alone may be
   * under way. When `swap` fails, what stands there is opened again. @throws ConflictError when it cannot be now
   */
  async replace<T>(swap: () => T): Promise<T> {
    if (this.replacing) throw new ConflictError('A backup is being put in place at this moment');
    const replaced = this.replaceNow(swap);
    this.replacing = replaced;
    return replaced.finally(() => {
      this.replacing = undefined;
    });
  }

  private async replaceNow<T>(swap: () => T): Promise<T> {
    this.endFeeds();
    if (!(await this.quiet())) {
      this.life = this.begin(this.life.record);
      throw new ConflictError('Another device is still sending. Nothing was changed; try again in a moment');
    }
    await this.life.record.close();
    try {
      return swap();
    } finally {
      this.life = this.begin(await this.open());
    }
  }

  private begin(record: OpenRecord): Life {
    const closing = new AbortController();
    // Every open feed waits for it, and there are as many as pages.
    setMaxListeners(0, closing.signal);
    return { record, app: this.appOf(record, closing.signal), closing };
  }

  private async quiet(): Promise<boolean> {
    for (let waited = 0; waited < longestWaitMs; waited += lookMs) {
      if (waited >= bodyWaitMs) this.cutSending();
      if (this.inFlight.size <= 1 && this.life.record.keeper.feed.listening === 0) return true;
      await wait(lookMs);
    }
    return false;
  }

  private cutSending(): void {
    for (const { incoming } of this.inFlight) if (incoming && !incoming.complete) incoming.socket.destroy();
  }
}

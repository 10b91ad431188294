import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { Client } from 'pg';
import type { StoredOperation } from '../../record/operation.ts';
import { ChangeFeed } from '../change-feed.ts';
import { DatabaseTrouble, troubleOf } from '../database-trouble.ts';

const channel = 'fairbend_changes';
/** One notice holds at most 8000 bytes (PostgreSQL's manual, NOTIFY); a document's id has at most 40. */
const documentsPerNotice = 100;
const firstRetryMs = 100;
const longestRetryMs = 5000;

/** Key of the advisory lock that every server of a record shares, and a move of the record takes alone. */
export const usedLock = [4870, 1] as const;

/**
 * The feed of several server processes on one PostgreSQL database: what one stores, the others are told of by
 * LISTEN and NOTIFY. The notice goes out after the commit and over a connection of its own, so that commits do
 * not queue behind it; should the process die in between, the others see the change at their next look.
 */
export class PostgresFeed extends ChangeFeed {
  private readonly address: string;
  /** What this process says itself it need not hear. */
  private readonly sender = randomUUID();
  private client: Client | undefined;
  private readonly pending = new Set<string>();
  private sending = false;
  private closed = false;

  private constructor(address: string) {
    super();
    this.address = address;
  }

  /** @throws DatabaseTrouble */
  static async open(address: string): Promise<PostgresFeed> {
    const feed = new PostgresFeed(address);
    try {
      await feed.connect();
      return feed;
    } catch (error) {
      throw troubleOf(error, address) ?? error;
    }
  }

  override publish(document: string, stored: readonly StoredOperation[]): void {
    super.publish(document, stored);
    this.pending.add(document);
    void this.send();
  }

  async close(): Promise<void> {
    this.closed = true;
    await this.client?.end().catch(() => undefined);
  }

  private async connect(): Promise<void> {
    const { default: pg } = await import('pg');
    const client = new pg.Client({
      connectionString: this.address,
      keepAlive: true,
      connectionTimeoutMillis: 5000,
      query_timeout: 10_000,
    });
    client.on('error', () => undefined);
    await client.connect();
    const { rows } = await client.query('select pg_try_advisory_lock_shared($1, $2) as free', [...usedLock]);
    if (!rows[0].free) {
      await client.end();
      throw new DatabaseTrouble('busy', this.address);
    }
    client.on('notification', ({ payload }) => this.heard(payload ?? ''));
    await client.query(`listen ${channel}`);
    client.once('end', () => void this.reconnect());
    this.client = client;
  }

  private async reconnect(): Promise<void> {
    this.client = undefined;
    for (let waitMs = firstRetryMs; !this.closed; waitMs = Math.min(2 * waitMs, longestRetryMs)) {
      await wait(waitMs, undefined, { ref: false });
      if (
        this.closed ||
        (await this.connect().then(
          () => true,
          () => false,
        ))
      )
        break;
    }
    if (this.closed) return this.close();
    this.lookAll();
    void this.send();
  }

  private heard(payload: string): void {
    const [sender, ...documents] = payload.split(' ');
    if (sender !== this.sender) for (const document of documents) this.ring(document, true);
  }

  /** One notice at a time; what comes meanwhile goes with the next. */
  private async send(): Promise<void> {
    if (this.sending) return;
    this.sending = true;
    while (this.pending.size > 0 && this.client) {
      const documents = [...this.pending].slice(0, documentsPerNotice);
      for (const document of documents) this.pending.delete(document);
      const payload = [this.sender, ...documents].join(' ');
      const sent = await this.client.query('select pg_notify($1, $2)', [channel, payload]).then(
        () => true,
        () => false,
      );
      if (sent) continue;
      for (const document of documents) this.pending.add(document);
      break;
    }
    this.sending = false;
  }
}

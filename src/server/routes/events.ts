import { Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { FeedMessage } from '../../record/api.ts';
import { RefusedError } from '../errors.ts';
import { type Keeper, operationsPerAnswer } from '../keeper.ts';
import type { AdmitVariables } from '../sharing/admit.ts';
import { socketOf } from '../sharing/stranger-bounds.ts';
import { BoundedStream } from './bounded-stream.ts';

/** Most documents one page may follow. */
const mostWatched = 20;
/** How often a stream says it is alive, and looks for what another process wrote. */
const heartbeatMs = 15_000;

/** Operations as they are stored: `?after=ID:SEQ`, once for every document to follow. */
export function eventRoutes(keeper: Keeper, closing: AbortSignal): Hono<{ Variables: AdmitVariables }> {
  const app = new Hono<{ Variables: AdmitVariables }>();
  app.get('/events', async (c) => {
    const watched = watchedDocuments(c.req.queries('after') ?? []);
    const sent = new Map<string, number>();
    const behind: string[] = [];
    for (const { document, seq, id } of watched) {
      const { lastSeq } = await keeper.findOrThrow(document);
      sent.set(document, Math.min(seq, lastSeq));
      if (lastSeq < seq || !(await keeper.holds(document, seq, id))) behind.push(document);
    }
    return streamSSE(c, (stream) => {
      const admitted = async () => (await c.get('standing')()) !== 'stranger';
      const cut = () => socketOf(c)?.destroy();
      return follow(new BoundedStream(stream, cut, closing), keeper, { sent, behind }, closing, admitted);
    });
  });
  return app;
}

/** What a reader has of a document: up to which number, and the id of that operation where he says it. */
interface Watched {
  document: string;
  seq: number;
  id: string | undefined;
}

function watchedDocuments(queries: readonly string[]): Watched[] {
  const pairs = queries.map((query) =>
    /^([A-Za-z0-9_-]{1,40}):(\d{1,9})(?::([A-Za-z0-9_.-]{1,90}))?$/.exec(query),
  );
  if (pairs.length === 0 || pairs.length > mostWatched || pairs.includes(null)) {
    const message = `after takes 1 to ${mostWatched} of DOCUMENT:SEQ, such as after=k3p9x2ab:17`;
    throw new RefusedError([{ path: 'after', message }]);
  }
  return pairs.map((pair) => ({ document: pair![1], seq: Number(pair![2]), id: pair![3] }));
}

/** Sends what is new, then waits to be told of more, until the reader goes or the server closes. */
async function follow(
  stream: BoundedStream,
  keeper: Keeper,
  { sent, behind }: { sent: Map<string, number>; behind: string[] },
  closing: AbortSignal,
  admitted: () => Promise<boolean>,
): Promise<void> {
  const bell = new Bell();
  // What this process stored it hands on; what may have come from elsewhere is looked for in the database.
  const toLookFor = new Set(sent.keys());
  const stops = [...sent.keys()].map((document) =>
    keeper.feed.subscribe(document, (elsewhere) => {
      if (elsewhere) toLookFor.add(document);
      bell.ring();
    }),
  );
  const onClosing = () => bell.ring();
  closing.addEventListener('abort', onClosing);
  stream.onAbort(() => bell.ring());
  await stream.send('record', { ...(await keeper.repository.opening()), behind });
  while (!stream.aborted && !closing.aborted && (await admitted())) {
    for (const [document, after] of sent) {
      const look = toLookFor.delete(document);
      sent.set(document, await sendNew(stream, keeper, { document, after, look }));
    }
    const rung = await bell.heard(heartbeatMs);
    if (rung) continue;
    for (const document of sent.keys()) toLookFor.add(document);
    await stream.alive();
  }
  closing.removeEventListener('abort', onClosing);
  for (const stop of stops) stop();
}

interface Place {
  document: string;
  /** The last its reader has. */
  after: number;
  /** Whether something may have come that this process did not store. */
  look: boolean;
}

/** Sends all there is after the place; answers the last sent. */
async function sendNew(stream: BoundedStream, keeper: Keeper, place: Place): Promise<number> {
  const { document, after, look } = place;
  const operations = await keeper.newOperations(document, after, look);
  if (operations.length === 0) return after;
  const message: FeedMessage = { document, operations };
  await stream.send('operations', message);
  const last = operations.at(-1)!.seq;
  return operations.length < operationsPerAnswer
    ? last
    : sendNew(stream, keeper, { document, after: last, look });
}

/** Rung while nobody listens, it is heard at once by the next who does. */
class Bell {
  private rung = false;
  private listener: (() => void) | undefined;

  ring(): void {
    this.rung = true;
    this.listener?.();
  }

  /** True when rung, false after `waitMs` of silence. */
  heard(waitMs: number): Promise<boolean> {
    return new Promise((resolve) => {
      const timer = setTimeout(() => this.listener?.(), waitMs);
      this.listener = () => {
        clearTimeout(timer);
        this.listener = undefined;
        resolve(this.rung);
        this.rung = false;
      };
      if (this.rung) this.listener();
    });
  }
}

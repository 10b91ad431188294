import type { AppendRequest, FeedMessage } from '../../src/record/api.ts';
import type { StoredOperation } from '../../src/record/operation.ts';
import { nothingStanding } from '../../src/record/standing.ts';
import { validateOperation } from '../../src/record/validate.ts';
import type { EventStream } from '../../src/web/store/live-feed.ts';

/** A server in memory for tests of the page's side: the same answers, a network that can be cut. */
export class FakeServer {
  readonly stored: StoredOperation[] = [];
  /** Requests do not arrive. */
  cut = false;
  /** Requests arrive and are carried out, but the answer is lost. */
  loseAnswers = 0;
  /** Which record the server keeps. */
  record = 'r1';
  /** As a server of another version might: a field it does not take. */
  unknownField = '';
  private readonly streams = new Set<FakeStream>();

  readonly fetch = (async (input: string | URL | Request, init?: RequestInit): Promise<Response> => {
    if (this.cut) throw new TypeError('fetch failed');
    const url = new URL(String(input), 'http://localhost');
    const answer = init?.method === 'POST' ? this.append(JSON.parse(String(init.body))) : this.after(url);
    if (this.loseAnswers > 0) {
      this.loseAnswers -= 1;
      throw new TypeError('fetch failed');
    }
    return answer;
  }) as typeof fetch;

  readonly connect = (address: string): EventStream => {
    const stream = new FakeStream(
      Number(new URL(address, 'http://localhost').searchParams.get('after')?.split(':')[1]),
    );
    this.streams.add(stream);
    queueMicrotask(() => this.feed());
    return stream;
  };

  /** Another device's operations reach the server. */
  arrive(operations: AppendRequest['operations']): void {
    this.append({ operations });
  }

  private append(request: AppendRequest): Response {
    const findings = request.operations.flatMap((operation) =>
      operation.path[2] === this.unknownField
        ? [{ path: operation.path.join('/'), message: 'not known here' }]
        : validateOperation('build', operation),
    );
    if (findings.length > 0) return Response.json({ message: 'refused', findings }, { status: 422 });
    for (const operation of request.operations) {
      if (this.stored.some((known) => known.id === operation.id)) continue;
      this.stored.push({ ...operation, seq: this.stored.length + 1, receivedAt: operation.at });
    }
    this.feed();
    return Response.json({ accepted: [], lastSeq: this.stored.length });
  }

  private after(url: URL): Response {
    const after = Number(url.searchParams.get('after'));
    const operations = this.stored.slice(after, after + 3);
    const more = after + 3 < this.stored.length;
    return Response.json({
      record: this.record,
      document: { kind: 'build' },
      operations,
      lastSeq: operations.at(-1)?.seq ?? after,
      more,
      standing: nothingStanding,
    });
  }

  private feed(): void {
    if (this.cut) return;
    for (const stream of this.streams) stream.send(this.stored);
  }
}

class FakeStream implements EventStream {
  private after: number;
  private closed = false;
  private readonly listeners: ((event: MessageEvent<string>) => void)[] = [];
  constructor(after: number) {
    this.after = after;
  }
  addEventListener(type: string, listener: (event: MessageEvent<string>) => void): void {
    if (type === 'operations') this.listeners.push(listener);
  }
  close(): void {
    this.closed = true;
  }
  send(all: readonly StoredOperation[]): void {
    const operations = all.slice(this.after);
    if (this.closed || operations.length === 0) return;
    this.after = all.length;
    const message: FeedMessage = { document: 'b1', operations };
    for (const listener of this.listeners)
      listener({ data: JSON.stringify(message) } as MessageEvent<string>);
  }
}

/** Local storage as far as the outbox uses it. */
export function fakeStorage(): Storage {
  const entries = new Map<string, string>();
  return {
    get length() {
      return entries.size;
    },
    key: (index) => [...entries.keys()][index] ?? null,
    getItem: (key) => entries.get(key) ?? null,
    setItem: (key, value) => void entries.set(key, value),
    removeItem: (key) => void entries.delete(key),
    clear: () => entries.clear(),
  };
}

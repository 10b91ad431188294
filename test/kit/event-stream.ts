import type { EventStream } from '../../src/web/store/live-feed.ts';

/** Server-sent events over fetch, for Node versions without an EventSource of their own. */
export function eventStream(base: string): (address: string) => EventStream {
  return (address) => new FetchEventStream(base + address);
}

type Listener = (event: MessageEvent<string>) => void;

class FetchEventStream implements EventStream {
  private readonly listeners: [type: string, Listener][] = [];
  private readonly abort = new AbortController();

  constructor(address: string) {
    void this.read(address).catch(() => this.emit('error', ''));
  }

  addEventListener(type: string, listener: Listener): void {
    this.listeners.push([type, listener]);
  }

  close(): void {
    this.listeners.length = 0;
    this.abort.abort();
  }

  private async read(address: string): Promise<void> {
    const response = await fetch(address, { signal: this.abort.signal });
    if (!response.ok || !response.body) throw new Error(`Event stream answered ${response.status}`);
    this.emit('open', '');
    let text = '';
    for await (const chunk of response.body.pipeThrough(new TextDecoderStream())) {
      const events = (text + chunk).split('\n\n');
      text = events.pop() ?? '';
      for (const event of events) this.parse(event);
    }
    throw new Error('The event stream ended');
  }

  private parse(event: string): void {
    const type = /^event: (.*)$/m.exec(event)?.[1];
    const data = /^data: (.*)$/m.exec(event)?.[1];
    if (type && data) this.emit(type, data);
  }

  private emit(type: string, data: string): void {
    for (const [wanted, listener] of [...this.listeners])
      if (wanted === type) listener({ data } as MessageEvent<string>);
  }
}

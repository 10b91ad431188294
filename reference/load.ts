/**
 * Simulated benches that edit at once: each has a build open beside another bench, hears the other's changes, and
 * sends gestures of one to three values as a builder leaves fields. Seeded, but for what the clock does.
 */
import { readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import type { FeedMessage, OperationsAnswer } from '../src/record/api.ts';
import type { Operation } from '../src/record/operation.ts';
import { seededRandom } from '../test/kit/server-process.ts';
import { loadAverage, processorMs, processorMsOfFamily } from './processor-time.ts';

export interface LoadOptions {
  /** Servers of one record; benches are spread over them. */
  addresses: readonly string[];
  /** The servers' processes: their memory and processor time are watched. */
  pids: readonly number[];
  /** The database server's first process, where it is one of its own. */
  databasePid?: number;
  benches: number;
  editsEach: number;
  /** The longest pause between two edits; half of it on average. */
  pauseMs: number;
}

export interface LoadFound {
  edits: number;
  /** Acknowledged, but not there afterwards. */
  lost: number;
  /** Of changes by another bench on the same build, not heard. */
  unheard: number;
  /** From sending to acknowledgement. */
  ms: Times;
  /** The same without the first tenth of every bench, in which the programs warm up. */
  msWarm: Times;
  /** Processor time per edit; what is not told is left out. */
  processorMsPerEdit: { servers?: number; database?: number; benches?: number };
  /** When the last edit was acknowledged: above the number of processors, the times are those of a crowd. */
  loadAverage: number;
  /** Resident memory of all servers after each tenth of the edits; empty where the system does not tell. */
  megabytes: number[];
}

interface Times {
  p50: number;
  p95: number;
  max: number;
}

const benchesPerBuild = 2;

export async function simulateLoad(options: LoadOptions): Promise<LoadFound> {
  const { addresses, benches, editsEach } = options;
  const builds: string[] = [];
  for (let build = 0; build < benches / benchesPerBuild; build++)
    builds.push((await post<{ id: string }>(addresses[0], '/api/documents', { kind: 'build' })).id);
  const found = { times: [] as number[], warm: [] as number[], megabytes: [] as number[] };
  const every = Math.max(1, Math.floor((benches * editsEach) / 10));
  const timed = (ms: number, count: number) => {
    found.times.push(ms);
    if (count > editsEach / 10) found.warm.push(ms);
    if (found.times.length % every === 0) found.megabytes.push(...megabytesOf(options.pids));
  };
  const all = Array.from({ length: benches }, (_, number) => new SimulatedBench(number, builds, options));
  await Promise.all(all.map((bench) => bench.open()));
  const before = processorUse(options);
  await Promise.all(all.map((bench) => bench.edit(timed)));
  const processorMsPerEdit = sharedOut(before, processorUse(options), found.times.length);
  const busy = loadAverage();
  const [stored] = [await storedIds(addresses[0], builds)];
  const lost = all.flatMap((bench) => bench.acknowledged).filter((id) => !stored.has(id)).length;
  let unheard = 0;
  for (const bench of all) unheard += await bench.missing(all);
  return {
    edits: found.times.length,
    lost,
    unheard,
    ms: timesOf(found.times),
    msWarm: timesOf(found.warm),
    processorMsPerEdit,
    loadAverage: busy,
    megabytes: found.megabytes,
  };
}

function timesOf(each: readonly number[]): Times {
  const sorted = [...each].sort((a, b) => a - b);
  const at = (share: number) => {
    const ms = sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
    return Math.round(10 * ms) / 10;
  };
  return { p50: at(0.5), p95: at(0.95), max: at(1) };
}

function processorUse({ pids, databasePid }: LoadOptions) {
  const { user, system } = process.cpuUsage();
  return {
    servers: processorMs(pids),
    database: databasePid === undefined ? undefined : processorMsOfFamily(databasePid),
    benches: (user + system) / 1000,
  };
}

type ProcessorUse = ReturnType<typeof processorUse>;

function sharedOut(before: ProcessorUse, after: ProcessorUse, edits: number) {
  const each = (['servers', 'database', 'benches'] as const).map((who) => {
    const ms = (after[who] ?? Number.NaN) - (before[who] ?? Number.NaN);
    return [who, Number.isFinite(ms) ? Math.round((100 * ms) / edits) / 100 : undefined] as const;
  });
  return Object.fromEntries(each) as LoadFound['processorMsPerEdit'];
}

class SimulatedBench {
  readonly acknowledged: string[] = [];
  readonly build: string;
  private readonly heard = new Set<string>();
  private readonly abort = new AbortController();
  private readonly address: string;
  private readonly random: () => number;
  private readonly number: number;
  private readonly options: LoadOptions;

  constructor(number: number, builds: readonly string[], options: LoadOptions) {
    this.number = number;
    this.options = options;
    this.build = builds[Math.floor(number / benchesPerBuild)];
    this.address = options.addresses[number % options.addresses.length];
    this.random = seededRandom(number + 1);
  }

  async open(): Promise<void> {
    const { signal } = this.abort;
    const response = await fetch(`${this.address}/api/events?after=${this.build}:0`, { signal });
    void this.listen(response).catch(() => undefined);
  }

  async edit(timed: (ms: number, count: number) => void): Promise<void> {
    for (let count = 1; count <= this.options.editsEach; count++) {
      if (this.options.pauseMs > 0) await wait(this.random() * this.options.pauseMs);
      const operations = this.gesture(count);
      const started = performance.now();
      await again(() => post(this.address, `/api/documents/${this.build}/operations`, { operations }));
      timed(performance.now() - started, count);
      this.acknowledged.push(...operations.map(({ id }) => id));
    }
  }

  /** How many changes of the benches on this build never came over the feed; ends it. */
  async missing(all: readonly SimulatedBench[]): Promise<number> {
    const wanted = all
      .filter(({ build }) => build === this.build)
      .flatMap(({ acknowledged }) => acknowledged);
    const count = () => wanted.filter((id) => !this.heard.has(id)).length;
    for (let looks = 0; looks < 200 && count() > 0; looks++) await wait(25);
    this.abort.abort();
    return count();
  }

  private async listen(response: Response): Promise<void> {
    let text = '';
    for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
      const events = (text + chunk).split('\n\n');
      text = events.pop()!;
      for (const event of events) {
        const [, data] = /^event: operations\ndata: (.*)$/m.exec(event) ?? [];
        if (data) for (const { id } of (JSON.parse(data) as FeedMessage).operations) this.heard.add(id);
      }
    }
  }

  private gesture(count: number): Operation[] {
    const device = `d${this.number}-load`;
    const length = 1 + Math.floor(this.random() * 3);
    return Array.from({ length }, (_, index) => ({
      id: `${device}.${count}.${index}`,
      device,
      clock: count,
      gesture: `edit.${count}`,
      path: ['readings', `r${Math.floor(this.random() * 40)}${index}`, 'drop'],
      old: null,
      value: { si: this.random(), text: `${count} of ${this.number}` },
      at: '2026-03-01T09:00:00Z',
    }));
  }
}

async function storedIds(address: string, builds: readonly string[]): Promise<Set<string>> {
  const ids = new Set<string>();
  for (const build of builds) {
    for (let after = 0, more = true; more; ) {
      const response = await again(() =>
        fetch(`${address}/api/documents/${build}/operations?after=${after}`),
      );
      const answer = (await response.json()) as OperationsAnswer;
      for (const { id } of answer.operations) ids.add(id);
      after = answer.lastSeq;
      more = answer.more;
    }
  }
  return ids;
}

/** As the page does where a kept connection was closed just as it was used: sent again, for a change counts once. */
function again<T>(send: () => Promise<T>): Promise<T> {
  return send().catch((error: unknown) => {
    if (error instanceof TypeError) return send();
    throw error;
  });
}

async function post<T>(address: string, path: string, body: unknown): Promise<T> {
  const headers = { 'content-type': 'application/json' };
  const response = await fetch(address + path, { method: 'POST', headers, body: JSON.stringify(body) });
  if (!response.ok) throw new Error(`${response.status}: ${await response.text()}`);
  return (await response.json()) as T;
}

/** The sum over the processes, as one entry; nothing where there is no /proc. */
function megabytesOf(pids: readonly number[]): number[] {
  try {
    const each = pids.map((pid) => /VmRSS:\s*(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))![1]);
    return [Math.round(each.reduce((sum, kilobytes) => sum + Number(kilobytes), 0) / 1024)];
  } catch {
    return [];
  }
}

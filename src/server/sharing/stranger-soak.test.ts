import { mkdtempSync, rmSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { judgeMemory, type MemoryLook } from '../../../reference/memory-judge.ts';
import { operation } from '../../../test/kit/one-operation.ts';
import { compileServer } from '../../../test/kit/server-process.ts';
import { WatchedServer } from '../../../test/kit/watched-server.ts';
import type { DocumentSummary } from '../../record/api.ts';

/** How long he hammers: for a machine that does nothing else; `npm test -- --long` has 300. */
const seconds = Number(process.env.STRANGER_SECONDS ?? 0);
const longestWaitMs = 200;
const looksTaken = 14;

const folder = mkdtempSync(join(tmpdir(), 'fairbend-hammer-'));
let server: WatchedServer;
beforeAll(async () => {
  if (seconds === 0) return;
  compileServer();
  server = await WatchedServer.start({ dataFolder: folder, host: '127.0.0.1', share: true });
});
afterAll(async () => {
  await server?.end();
  rmSync(folder, { recursive: true, force: true });
});

/** What a proxy passes on is not from this computer. */
const elsewhere = { 'x-forwarded-for': '192.0.2.7', 'content-type': 'application/json' };
const json = (body: unknown) => ({ method: 'POST', headers: elsewhere, body: JSON.stringify(body) });

async function pairedCookie(): Promise<string> {
  const made = await fetch(`${server.address}/api/sharing/code`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  const { code } = (await made.json()) as { code: string };
  const paired = await fetch(`${server.address}/api/pair`, json({ code, name: 'Bench' }));
  return paired.headers.get('set-cookie')!.split(';')[0];
}

/** Wrong codes, bodies that never end, bodies that are too long, questions and feeds nobody may ask for. */
class Stranger {
  private on = true;
  private readonly held: Socket[] = [];
  private readonly going: Promise<void>[] = [];
  requests = 0;

  begin(): void {
    const asks: (() => Promise<Response>)[] = [
      () => fetch(`${server.address}/api/pair`, json({ code: 'ZZZZZZ', name: 'x' })),
      () => fetch(`${server.address}/api/pair`, json({ code: 'x'.repeat(20_000), name: 'x' })),
      () => fetch(`${server.address}/api/documents`, { headers: elsewhere }),
      () => fetch(`${server.address}/api/events?after=demo:0`, { headers: elsewhere }),
      () => fetch(`${server.address}/api/documents/demo/operations`, json({ operations: [] })),
    ];
    for (const ask of asks) this.going.push(this.again(async () => void (await (await ask()).text())));
    for (let number = 0; number < 15; number++) this.going.push(this.again(() => this.drip()));
  }

  private async again(once: () => Promise<void>): Promise<void> {
    while (this.on) {
      await once().catch(() => undefined);
      this.requests += 1;
      await wait(5);
    }
  }

  /** Half a request, held until the server cuts it off. */
  private drip(): Promise<void> {
    const { port, host } = new URL(server.address);
    const socket = connect(Number(port), '127.0.0.1');
    this.held.push(socket);
    socket.on('error', () => undefined);
    socket.write(`POST /api/pair HTTP/1.1\r\nHost: ${host}\r\nX-Forwarded-For: 192.0.2.7\r\n`);
    socket.write('Content-Type: application/json\r\nContent-Length: 100\r\n\r\n{"code":');
    return new Promise((resolve) => {
      socket.once('close', () => resolve());
    });
  }

  async end(): Promise<void> {
    this.on = false;
    for (const socket of this.held) socket.destroy();
    await Promise.all(this.going);
  }
}

test.skipIf(seconds === 0)(
  `a stranger who hammers for ${seconds} s keeps no paired device waiting and makes nothing grow`,
  async () => {
    const headers = { ...elsewhere, cookie: await pairedCookie() };
    const made = await fetch(`${server.address}/api/documents`, { ...json({ kind: 'build' }), headers });
    const { id } = (await made.json()) as DocumentSummary;
    let clock = 10;
    const edit = async () => {
      const started = performance.now();
      const operations = [operation(++clock, `title ${clock}`)];
      const saved = await fetch(`${server.address}/api/documents/${id}/operations`, {
        ...json({ operations }),
        headers,
      });
      expect(saved.status).toBe(200);
      await saved.text();
      return performance.now() - started;
    };
    const editFor = async (ms: number) => {
      const waits: number[] = [];
      for (const end = performance.now() + ms; performance.now() < end; await wait(40))
        waits.push(await edit());
      return waits;
    };
    const alone = await editFor(Math.max(2000, 100 * seconds));
    const stranger = new Stranger();
    stranger.begin();
    const [waits, looks]: [number[], MemoryLook[]] = [[], []];
    for (let look = 0; look < looksTaken; look++) {
      waits.push(...(await editFor((seconds * 1000) / looksTaken)));
      // Collecting garbage to look at the memory holds the server up; no edit is under way then.
      looks.push({ edits: clock, bytes: await server.heldBytes() });
    }
    await stranger.end();
    const memory = judgeMemory(looks);
    const [worstAlone, worst] = [alone, waits].map((all) => Math.max(...all));
    console.log(
      `    ${stranger.requests} requests of a stranger; ${waits.length} edits waited ${middle(waits)} ms at the median, ${worst.toFixed(0)} at most; alone ${middle(alone)} and ${worstAlone.toFixed(0)}; ${memory.bytesPerEdit.toFixed(0)} bytes held an edit`,
    );
    expect(stranger.requests).toBeGreaterThan(5 * seconds);
    expect(worst).toBeLessThan(longestWaitMs);
    expect(memory.grows).toBe(false);
  },
  seconds * 3000 + 60_000,
);

function middle(all: readonly number[]): string {
  return all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)].toFixed(0);
}

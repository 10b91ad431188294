import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { connect, createServer, type Server, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ScratchDatabase, scratchDatabase } from '../../../test/kit/scratch-database.ts';
import { compileServer } from '../../../test/kit/server-process.ts';
import { serve } from '../serve.ts';

const folder = mkdtempSync(join(tmpdir(), 'fairbend-frozen-'));
let scratch: ScratchDatabase;
beforeAll(async () => {
  compileServer();
  scratch = await scratchDatabase();
});
afterAll(async () => {
  await scratch.drop();
  rmSync(folder, { recursive: true, force: true });
});

/** A way to the database that can fall silent without ending. */
class Way {
  private readonly server: Server;
  private readonly sockets = new Set<Socket>();
  silent = false;

  constructor(to: URL) {
    this.server = createServer((near) => {
      const far = connect(Number(to.port), to.hostname);
      for (const [from, into] of [
        [near, far],
        [far, near],
      ]) {
        this.sockets.add(from);
        from.on('error', () => undefined);
        from.on('data', (data) => this.silent || into.write(data));
        from.on('close', () => into.destroy());
      }
    });
  }

  async address(of: string): Promise<string> {
    await new Promise<void>((resolve) => this.server.listen(0, '127.0.0.1', resolve));
    const through = new URL(of);
    through.hostname = '127.0.0.1';
    through.port = String((this.server.address() as { port: number }).port);
    return through.href;
  }

  end(): void {
    for (const socket of this.sockets) socket.destroy();
    this.server.close();
  }
}

test('a database that falls silent: requests are answered in words, and SIGTERM ends the server in time', async () => {
  const way = new Way(new URL(scratch.address));
  const databaseUrl = await way.address(scratch.address);
  const main = fileURLToPath(new URL('../../../dist/server/run-server.js', import.meta.url));
  const program = `
    const { runServer, endSoon } = await import(${JSON.stringify(main)});
    process.exitCode = await runServer(${JSON.stringify({ data: join(folder, 'one'), port: '0' })});
    endSoon();
  `;
  const child = spawn(process.execPath, ['--input-type=module', '-e', program], {
    env: { ...process.env, DATABASE_URL: databaseUrl },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const gone = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const address = await new Promise<string>((resolve) =>
    child.stdout.on('data', (text) => {
      const [, found] = /Fairbend: (\S+)/.exec(String(text)) ?? [];
      if (found) resolve(found);
    }),
  );
  expect((await fetch(`${address}/api/documents`)).status).toBe(200);
  way.silent = true;
  const answer = await fetch(`${address}/api/documents`, { signal: AbortSignal.timeout(30_000) });
  expect(answer.status).toBe(503);
  expect(((await answer.json()) as { message: string }).message).toMatch(/does not answer.*then try again/);
  const asked = performance.now();
  child.kill('SIGTERM');
  expect(await gone).toBe(0);
  // The promise itself: a system that ends its services waits no longer.
  expect(performance.now() - asked).toBeLessThan(6000);
  way.end();
});

test('a pairing code made at one server is taken at another, once', async () => {
  const open = (name: string) =>
    serve({
      dataFolder: join(folder, name),
      port: 0,
      host: '127.0.0.1',
      share: true,
      databaseUrl: scratch.address,
    });
  const [one, two] = [await open('a'), await open('b')];
  const pair = async (address: string, code: string) => {
    const headers = { 'content-type': 'application/json' };
    const body = JSON.stringify({ code, name: 'Tablet' });
    return (await fetch(`${address}/api/pair`, { method: 'POST', headers, body })).status;
  };
  const { code } = one.pairing!;
  expect(await pair(two.address, code)).toBe(201);
  expect(await pair(one.address, code)).toBe(422);
  for (let tries = 0; tries < 5; tries++) expect(await pair(one.address, 'ZZZZZZ')).toBe(422);
  expect(await pair(one.address, two.pairing!.code)).toBe(422);
  await Promise.all([one.close(), two.close()]);
});

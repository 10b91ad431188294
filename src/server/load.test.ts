import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { simulateLoad } from '../../reference/load.ts';
import { type ScratchDatabase, scratchDatabase } from '../../test/kit/scratch-database.ts';
import { compileServer, type ServerProcess, startServer } from '../../test/kit/server-process.ts';

/** On PostgreSQL (TEST_DATABASE_URL) fifty benches on two servers, on SQLite ten on one. */
const [benches, servers, editsEach] = process.env.TEST_DATABASE_URL ? [50, 2, 6] : [10, 1, 40];

const folder = mkdtempSync(join(tmpdir(), 'fairbend-load-'));
const running: ServerProcess[] = [];
let scratch: ScratchDatabase | undefined;
beforeAll(async () => {
  compileServer();
  scratch = process.env.TEST_DATABASE_URL ? await scratchDatabase() : undefined;
  for (let number = 0; number < servers; number++)
    running.push(await startServer(join(folder, `s${number}`), { databaseUrl: scratch?.address }));
});
afterAll(async () => {
  for (const { end } of running) await end('SIGTERM');
  await scratch?.drop();
  rmSync(folder, { recursive: true, force: true });
});

test(`${benches} benches that edit at once lose nothing, hear each other, and leave memory bounded`, async () => {
  const found = await simulateLoad({
    addresses: running.map(({ address }) => address),
    pids: running.map(({ child }) => child.pid!),
    benches,
    editsEach,
    pauseMs: 0,
  });
  expect(found).toMatchObject({ edits: benches * editsEach, lost: 0, unheard: 0 });
  const { megabytes } = found;
  console.log(`    p95 ${found.ms.p95.toFixed(0)} ms an edit, without a pause; MB ${megabytes.join(' ')}`);
  // The first tenths still load and compile; what the last one holds must not outgrow them.
  if (megabytes.length >= 10)
    expect(megabytes.at(-1)!).toBeLessThan(1.5 * Math.max(...megabytes.slice(0, 4)));
}, 300_000);

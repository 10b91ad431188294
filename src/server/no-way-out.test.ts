import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { compileServer } from '../../test/kit/server-process.ts';
import { type RunningServer, serve } from './serve.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-paths-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a path that leads out of the folder finds nothing of it', () => {
  const home = mkdtempSync(join(tmpdir(), 'fairbend-no-way-out-'));
  let server: RunningServer;
  beforeAll(async () => {
    writeFileSync(join(home, 'secret.txt'), 'a secret beside the data');
    server = await serve({ dataFolder: join(home, 'data'), port: 0 });
  });
  afterAll(async () => {
    await server.close();
    rmSync(home, { recursive: true, force: true });
  });

  /** Byte for byte as written; a browser or fetch would tidy the path up. */
  function askRaw(path: string): Promise<string> {
    const { hostname, port, host } = new URL(server.address);
    return new Promise((resolve, reject) => {
      let text = '';
      const socket = connect(Number(port), hostname, () =>
        socket.write(`GET ${path} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`),
      );
      socket.on('data', (chunk) => {
        text += chunk;
      });
      socket.on('end', () => resolve(text)).on('error', reject);
    });
  }

  const up = ['../', '..%2f', '%2e%2e/', '%2e%2e%2f', '..\\', '..%5c', '%252e%252e%252f', '....//', '..%00/'];
  test.each(up)('%s', async (step) => {
    const places = ['/', '/assets/', '/api/backups/', '/api/attachments/', '/api/documents/'];
    for (const place of places) {
      for (const file of ['secret.txt', 'data/fairbend.sqlite', 'etc/passwd', 'package.json']) {
        for (const steps of [1, 2, 8]) {
          const answer = await askRaw(place + step.repeat(steps) + file);
          expect(answer).toMatch(/^HTTP\/1\.1 (200|400|404|421)/);
          expect(answer).not.toMatch(/a secret beside|SQLite format 3|root:x:0|"@hono\/node-server"/);
        }
      }
    }
  });
});

/** Root may write everywhere, so there the server is started under an account that may not. */
const asStranger = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
const module = fileURLToPath(new URL('../../dist/server/serve.js', import.meta.url));
const program = (dataFolder: string) => `
  const { serve } = await import(${JSON.stringify(module)});
  await serve(${JSON.stringify({ dataFolder, port: 0 })}).then(
    () => { console.log('started'); process.exit(0); },
    (error) => { console.log(error.message); process.exit(1); },
  );`;

function startIn(dataFolder: string): string {
  const run = spawnSync(process.execPath, ['--input-type=module', '-e', program(dataFolder)], {
    ...asStranger,
    cwd: '/',
    encoding: 'utf8',
  });
  return run.stdout + run.stderr;
}

/** Whether the account can run the program at all: a checkout in a closed home cannot be read by it. */
function canRun(): boolean {
  compileServer();
  const reads = `const fs = await import('node:fs'); fs.readFileSync(${JSON.stringify(module)})`;
  const run = spawnSync(process.execPath, ['--input-type=module', '-e', reads], { ...asStranger, cwd: '/' });
  return run.status === 0;
}

describe.skipIf(process.platform === 'win32' || !canRun())('a data folder that may not be written', () => {
  test('is named, with what to do, and nothing in it is changed', () => {
    chmodSync(folder, 0o755);
    const data = join(folder, 'data');
    mkdirSync(data, { mode: 0o555 });
    expect(startIn(data)).toMatch(
      /data\/server-lock\.sqlite cannot be opened\. .*may be written.*--data FOLDER/,
    );
    expect(startIn(join(data, 'deeper'))).toMatch(/cannot be opened.*--data FOLDER/);
    chmodSync(data, 0o777);
    expect(startIn(data)).toMatch(/started/);
  });

  test('where the folder may be written and the database may not, it is named and stays as it is', async () => {
    await (await serve({ dataFolder: folder, port: 0 })).close();
    // A server closes its folder to other accounts; the one below is another.
    chmodSync(folder, 0o777);
    const file = join(folder, 'fairbend.sqlite');
    const before = readFileSync(file);
    chmodSync(file, 0o444);
    chmodSync(join(folder, 'server-lock.sqlite'), 0o666);
    const said = startIn(folder);
    expect(said).toMatch(/fairbend\.sqlite may not be written\. .*--data FOLDER/);
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});

import { mkdtempSync, rmSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type RunningServer, serve } from '../serve.ts';

let folder = '';
let server: RunningServer;
const sockets: Socket[] = [];
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-stranger-'));
  server = await serve({ dataFolder: folder, port: 0, host: '127.0.0.1', share: true });
});
afterEach(async () => {
  for (const socket of sockets.splice(0)) socket.destroy();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

const port = () => Number(new URL(server.address).port);

/** A connection that sends `text` and then leaves it at that; `closed` when the server ends it. */
function open(text: string): { socket: Socket; closed: Promise<void>; heard: Promise<string> } {
  const socket = connect(port(), '127.0.0.1');
  sockets.push(socket);
  socket.on('error', () => undefined);
  socket.write(text);
  const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
  const heard = new Promise<string>((resolve) => socket.once('data', (data) => resolve(String(data))));
  return { socket, closed, heard };
}

const head = (method: string, path: string, more = '') =>
  `${method} ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\nX-Forwarded-For: 192.0.2.7\r\n${more}\r\n`;
const half = () =>
  open(`${head('POST', '/api/pair', 'Content-Type: application/json\r\nContent-Length: 100\r\n')}{"code":`);

async function post(path: string): Promise<{ status: number; name?: string }> {
  const headers = { 'content-type': 'application/json' };
  const response = await fetch(`${server.address}/api${path}`, { method: 'POST', headers, body: '{}' });
  return { status: response.status, ...(await response.json()) };
}

test('a stranger who never ends what he sends does not keep a backup from being put in place', async () => {
  const { name } = await post('/backups');
  const { closed } = half();
  await expect.poll(async () => (await post(`/backups/${name}/restore`)).status, { timeout: 9000 }).toBe(200);
  await closed;
});

test('a reader of the feed who never reads does not either', async () => {
  const { name } = await post('/backups');
  const headers = { 'content-type': 'application/json' };
  const feed = connect(port(), '127.0.0.1');
  sockets.push(feed);
  feed.on('error', () => undefined);
  feed.pause();
  feed.write(`GET /api/events?after=demo:0 HTTP/1.1\r\nHost: 127.0.0.1:${port()}\r\n\r\n`);
  // More than the system's own buffers of a connection take.
  for (let clock = 900; clock < 930; clock++) {
    const operations = Array.from({ length: 15 }, (_, index) => ({
      id: `d1-a.${clock}.${index}`,
      device: 'd1-a',
      clock,
      gesture: 'long',
      path: ['about', '-', 'note'],
      old: null,
      value: `${clock} ${index}`.padEnd(19_000, 'x'),
      at: '2026-03-01T09:00:00Z',
    }));
    const body = JSON.stringify({ operations });
    const { status } = await fetch(`${server.address}/api/documents/demo/operations`, {
      method: 'POST',
      headers,
      body,
    });
    expect(status).toBe(200);
  }
  expect((await post(`/backups/${name}/restore`)).status).toBe(200);
});

test('more strangers at once than are looked at are told to come again, and paired devices are served', async () => {
  const waiting = Array.from({ length: 20 }, half);
  await Promise.all(waiting.map(({ socket }) => new Promise((resolve) => socket.once('connect', resolve))));
  const asked = () =>
    open(`${head('POST', '/api/pair', 'Content-Type: application/json\r\nContent-Length: 2\r\n')}{}`);
  await expect.poll(async () => (await asked().heard).split(' ')[1]).toBe('429');
  expect((await fetch(`${server.address}/api/documents`)).status).toBe(200);
});

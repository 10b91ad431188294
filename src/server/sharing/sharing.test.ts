import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { type IncomingMessage, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, type ServeOptions, serve } from '../serve.ts';
import { FileSessions } from './file-sessions.ts';
import { Pairing } from './pairing.ts';

let folder = '';
let server: RunningServer | undefined;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-share-'));
});
afterEach(async () => {
  await server?.close();
  server = undefined;
  rmSync(folder, { recursive: true, force: true });
});

const start = async (options: Partial<ServeOptions> = {}) => {
  server = await serve({ dataFolder: folder, port: 0, host: '127.0.0.1', share: true, ...options });
  return server;
};

interface Answer {
  status: number;
  headers: IncomingMessage['headers'];
  body: string;
}

/** A request with any headers, Host among them, which fetch would not send. */
function ask(
  method: string,
  path: string,
  headers: Record<string, string> = {},
  body?: unknown,
): Promise<Answer> {
  const json: Record<string, string> = body === undefined ? {} : { 'content-type': 'application/json' };
  return new Promise((resolve, reject) => {
    const sent = request(
      `${server!.address}${path}`,
      { method, headers: { ...json, ...headers } },
      (answer) => {
        let text = '';
        answer.on('data', (chunk) => {
          text += chunk;
        });
        answer.on('end', () => resolve({ status: answer.statusCode!, headers: answer.headers, body: text }));
      },
    );
    sent.on('error', reject);
    sent.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

/** As it comes from another device: through a proxy on this computer, which says so. */
const elsewhere = { 'x-forwarded-for': '192.0.2.7' };

async function pairedCookie(): Promise<string> {
  const { status, headers } = await ask('POST', '/api/pair', elsewhere, {
    code: server!.pairing!.code,
    name: 'Tablet',
  });
  expect(status).toBe(201);
  return headers['set-cookie']![0].split(';')[0];
}

describe('a stranger', () => {
  test.each([
    ['GET', '/api/documents'],
    ['GET', '/api/documents/demo/file'],
    ['GET', '/api/events?after=demo:0'],
    ['GET', '/api/backups'],
    ['GET', '/api/info'],
    ['GET', '/api/sharing'],
    ['POST', '/api/sharing/code'],
    ['POST', '/api/documents'],
    ['GET', '/api//documents'],
    ['GET', '/api/%64ocuments'],
  ])('gets nothing of %s %s', async (method, path) => {
    await start();
    const { status, body } = await ask(method, path, elsewhere, method === 'POST' ? {} : undefined);
    expect([401, 404]).toContain(status);
    expect(body).not.toMatch(/demo|dataFolder|"code":/);
  });

  test('with a made-up or an empty cookie stays one', async () => {
    await start();
    for (const cookie of ['fairbend-session=', 'fairbend-session=abc', `fairbend-session=${'0'.repeat(64)}`])
      expect((await ask('GET', '/api/documents', { ...elsewhere, cookie })).status).toBe(401);
  });

  test('is one too where nothing is shared', async () => {
    await start({ share: false });
    expect(server!.pairing).toBeUndefined();
    expect((await ask('GET', '/api/documents', elsewhere)).status).toBe(401);
    expect((await ask('POST', '/api/pair', elsewhere, { code: 'ABCDEF', name: '' })).status).toBe(404);
    expect((await ask('GET', '/api/documents')).status).toBe(200);
  });
});

describe('pairing', () => {
  test('lets one device in by a cookie no script reads and no other page sends', async () => {
    await start();
    const code = server!.pairing!.code;
    const { headers } = await ask('POST', '/api/pair', elsewhere, {
      code: ` ${code.toLowerCase()} `,
      name: 'T',
    });
    expect(headers['set-cookie']![0]).toMatch(/HttpOnly/);
    expect(headers['set-cookie']![0]).toMatch(/SameSite=Strict/);
    const cookie = headers['set-cookie']![0].split(';')[0];
    expect((await ask('GET', '/api/documents', { ...elsewhere, cookie })).status).toBe(200);
    expect((await ask('POST', '/api/pair', elsewhere, { code, name: 'Second' })).status).toBe(422);
  });

  test('five wrong tries end the code, the right one included', async () => {
    await start();
    for (let tries = 0; tries < 5; tries++)
      expect((await ask('POST', '/api/pair', elsewhere, { code: `WRONG${tries}`, name: '' })).status).toBe(
        422,
      );
    const right = { code: server!.pairing!.code, name: '' };
    expect((await ask('POST', '/api/pair', elsewhere, right)).status).toBe(422);
  });

  test('a code ends by its age', () => {
    let ms = 0;
    const pairing = new Pairing(() => new Date(ms));
    const { code } = pairing.makeCode();
    ms = 10 * 60_000 - 1;
    expect(pairing.accept(code)).toBe(true);
    const again = pairing.makeCode();
    ms += 10 * 60_000;
    expect(pairing.accept(again.code)).toBe(false);
  });

  test('a paired device makes no codes, shuts nobody out, restores nothing and takes no shop in', async () => {
    await start();
    const cookie = await pairedCookie();
    for (const path of ['/api/sharing/code', '/api/sharing/sessions/x/end', '/api/backups/x/restore'])
      expect((await ask('POST', path, { ...elsewhere, cookie }, {})).status).toBe(403);
    const archive = { ...elsewhere, cookie, 'content-type': 'application/octet-stream' };
    expect((await ask('POST', '/api/shop/import', archive, {})).status).toBe(403);
  });
});

describe('a session', () => {
  test('ended on this computer is ended at once, its open stream too', async () => {
    await start();
    const cookie = await pairedCookie();
    const stream = ask('GET', '/api/events?after=demo:0', { ...elsewhere, cookie });
    const { sessions } = JSON.parse((await ask('GET', '/api/sharing')).body) as {
      sessions: { id: string }[];
    };
    expect(sessions).toMatchObject([{ name: 'Tablet' }]);
    await ask('POST', `/api/sharing/sessions/${sessions[0].id}/end`, {}, {});
    expect((await ask('GET', '/api/documents', { ...elsewhere, cookie })).status).toBe(401);
    await ask('POST', '/api/demo/reset', {}, {});
    const change = { id: 'd1-a.9.0', device: 'd1-a', clock: 9, gesture: 'g', old: null, value: 'after' };
    const operation = { ...change, path: ['about', '-', 'customer'], at: '2026-03-01T09:00:00Z' };
    expect(
      (await ask('POST', '/api/documents/demo/operations', {}, { operations: [operation] })).status,
    ).toBe(200);
    expect((await stream).body).not.toContain('d1-a.9.0');
  });

  test('survives a restart, keeps no secret on the disk, and ends after thirty days', async () => {
    let ms = Date.UTC(2026, 2, 1);
    const now = () => new Date(ms);
    const token = await new FileSessions(folder, now).begin('Tablet');
    expect(readFileSync(join(folder, 'sessions.json'), 'utf8')).not.toContain(token);
    expect(statSync(join(folder, 'sessions.json')).mode & 0o077).toBe(0);
    expect(await new FileSessions(folder, now).knows(token)).toBe(true);
    ms += 31 * 24 * 3600e3;
    expect(await new FileSessions(folder, now).knows(token)).toBe(false);
  });
});

describe('while shared', () => {
  test.each([
    ['a foreign name pointed here (DNS rebinding)', { host: 'evil.example' }, 421],
    ['a page of another site with the cookie (CSRF)', { origin: 'https://evil.example' }, 403],
    ['what the browser calls cross-site', { 'sec-fetch-site': 'cross-site' }, 403],
    ['a form', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
  ])('%s is turned away', async (_, headers: Record<string, string>, status) => {
    await start();
    const cookie = await pairedCookie();
    const made = await ask('POST', '/api/documents', { ...elsewhere, cookie, ...headers }, { kind: 'build' });
    expect(made.status).toBe(status);
  });

  test('behind a TLS proxy its own origin alone is taken, and the cookie travels only encrypted', async () => {
    await start({ proxyOrigin: 'https://rods.example' });
    const host = { ...elsewhere, host: 'rods.example' };
    const pair = (origin: string) =>
      ask('POST', '/api/pair', { ...host, origin }, { code: server!.pairing!.code, name: '' });
    expect((await pair('http://rods.example')).status).toBe(403);
    const { status, headers } = await pair('https://rods.example');
    expect(status).toBe(201);
    expect(headers['set-cookie']![0]).toMatch(/Secure/);
  });

  test('a proxy that names itself this computer is no this computer', async () => {
    await start();
    for (const header of ['x-forwarded-for', 'forwarded', 'via', 'x-real-ip'])
      expect((await ask('GET', '/api/sharing', { [header]: '127.0.0.1' })).status).toBe(401);
  });
});

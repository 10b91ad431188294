import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import type { IncomingMessage } from 'node:http';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TLSSocket } from 'node:tls';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { SharingAnswer } from '../../record/sharing-api.ts';
import { type RunningServer, serve } from '../serve.ts';
import { shopCertificate } from './certificate.ts';
import { lanAddresses } from './own-names.ts';

let folder = '';
let server: RunningServer | undefined;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-tls-'));
});
afterEach(async () => {
  await server?.close();
  server = undefined;
  rmSync(folder, { recursive: true, force: true });
});

interface Answer {
  status: number;
  headers: IncomingMessage['headers'];
  fingerprint: string;
}

/** As a phone asks, which trusts this one certificate and no other. */
function ask(port: number, ca: string, headers: Record<string, string>, body?: unknown): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const path = body === undefined ? '/api/documents' : '/api/pair';
    // A connection of its own: one kept alive would end with another word than a door that is shut.
    const options = {
      host: '127.0.0.1',
      port,
      ca,
      path,
      method: body === undefined ? 'GET' : 'POST',
      agent: false,
    };
    const sent = request(
      { ...options, headers: { 'content-type': 'application/json', ...headers } },
      (answer) => {
        const fingerprint = (answer.socket as TLSSocket).getPeerCertificate().fingerprint256;
        answer
          .resume()
          .on('end', () => resolve({ status: answer.statusCode!, headers: answer.headers, fingerprint }));
      },
    );
    sent.on('error', reject);
    sent.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

describe('the certificate', () => {
  const names = ['localhost', '127.0.0.1', '192.0.2.7'];
  const now = new Date();
  const days = (count: number) => new Date(now.getTime() + count * 24 * 3600e3);

  test('is made once, for these names alone, and its key is readable by the account alone', async () => {
    const made = await shopCertificate(folder, names, now);
    const certificate = new X509Certificate(made.certificatePem);
    expect(certificate.checkIP('192.0.2.7')).toBe('192.0.2.7');
    expect(certificate.checkHost('localhost')).toBe('localhost');
    expect(certificate.checkHost('elsewhere.example')).toBeUndefined();
    expect(certificate.ca).toBe(false);
    expect(certificate.verify(certificate.publicKey)).toBe(true);
    const holds = Date.parse(certificate.validTo) - Date.parse(certificate.validFrom);
    expect(holds).toBeLessThan(825 * 24 * 3600e3);
    expect(statSync(join(folder, 'certificate.pem')).mode & 0o077).toBe(0);
    expect(await shopCertificate(folder, names, days(700))).toEqual(made);
  });

  test.each([
    ['ends soon', names, 790],
    ['lacks a name', [...names, '198.51.100.9'], 0],
  ])('that %s is made anew', async (_, wanted, after) => {
    const made = await shopCertificate(folder, names, now);
    expect((await shopCertificate(folder, wanted, days(after))).fingerprint).not.toBe(made.fingerprint);
  });

  test('whose file makes no sense is made anew', async () => {
    writeFileSync(join(folder, 'certificate.pem'), 'half a fi');
    expect((await shopCertificate(folder, names, now)).fingerprint).toMatch(
      /^([0-9A-F]{2}:){31}[0-9A-F]{2}$/,
    );
  });
});

describe('a shop shared by https', () => {
  const start = async (host?: string) => {
    server = await serve({ dataFolder: folder, port: 0, tlsPort: 0, share: true, tls: true, host });
    const sharing = await (await fetch(`${server.address}/api/sharing`)).json();
    const ca = readFileSync(join(folder, 'certificate.pem'), 'utf8');
    return { sharing, ca, port: server.tlsPort! };
  };

  test('pairs over it, with a cookie that never travels unencrypted; this computer stays on plain http', async () => {
    const { sharing, ca, port } = await start();
    expect(server!.address).toMatch(/^http:\/\/127\.0\.0\.1:/);
    for (const address of sharing.addresses) expect(address).toMatch(new RegExp(`^https://.*:${port}$`));
    expect(sharing.addresses).toHaveLength(lanAddresses().length);
    // From another device: what a proxy passes on is not from this computer.
    const elsewhere = { host: `localhost:${port}`, 'x-forwarded-for': '192.0.2.7' };
    expect((await ask(port, ca, elsewhere)).status).toBe(401);
    const origin = `https://localhost:${port}`;
    const paired = await ask(
      port,
      ca,
      { ...elsewhere, origin },
      { code: server!.pairing!.code, name: 'Phone' },
    );
    expect(paired.status).toBe(201);
    expect(paired.headers['set-cookie']![0]).toMatch(/; Secure/);
    const cookie = paired.headers['set-cookie']![0].split(';')[0];
    expect((await ask(port, ca, { ...elsewhere, cookie })).status).toBe(200);
    expect((await ask(port, ca, { ...elsewhere, cookie, origin: `http://localhost:${port}` })).status).toBe(
      403,
    );
  });

  test('on one address of this computer is reached there alone, and tells no other', async () => {
    const { sharing, ca, port } = await start('127.0.0.1');
    expect(sharing.addresses).toEqual([]);
    expect((await ask(port, ca, { host: `localhost:${port}` })).status).toBe(200);
    for (const address of lanAddresses())
      await expect(fetch(`http://${address}:${port}`)).rejects.toMatchObject({
        cause: { code: 'ECONNREFUSED' },
      });
  });

  test('shows the fingerprint of the certificate it uses', async () => {
    const { sharing, ca, port } = await start();
    const { fingerprint } = await ask(port, ca, { host: `localhost:${port}` });
    expect(sharing.fingerprint).toBe(fingerprint);
    expect(server!.pairing!.fingerprint).toBe(fingerprint);
  });

  test('is not taken for another by a device that knows its certificate', async () => {
    const { port } = await start();
    const other = mkdtempSync(join(tmpdir(), 'fairbend-tls-'));
    const strange = await shopCertificate(other, ['localhost', '127.0.0.1'], new Date());
    await expect(ask(port, strange.certificatePem, { host: `localhost:${port}` })).rejects.toThrow(
      /self-signed/,
    );
    rmSync(other, { recursive: true, force: true });
  });
});

describe('the switch for phones', () => {
  const start = async (options: Partial<Parameters<typeof serve>[0]> = {}) => {
    server = await serve({ dataFolder: folder, port: 0, tlsPort: 0, ...options });
  };
  const sharing = async () => (await (await fetch(`${server!.address}/api/sharing`)).json()) as SharingAnswer;
  const post = (path: string, body: unknown = {}) =>
    fetch(`${server!.address}/api/sharing/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  const turn = async (open: boolean) => (await (await post('open', { open })).json()) as SharingAnswer;
  const portOf = ({ addresses }: SharingAnswer) => Number(new URL(addresses[0]).port);
  const phone = (port: number, more: Record<string, string> = {}) => ({
    host: `localhost:${port}`,
    'x-forwarded-for': '192.0.2.7',
    ...more,
  });
  const certificate = () => readFileSync(join(folder, 'certificate.pem'), 'utf8');

  test('lets them in by https without a restart, and shuts them out again, paired ones too', async () => {
    await start();
    expect(await sharing()).toMatchObject({ shared: false, switchable: true, addresses: [] });
    expect((await post('code')).status).toBe(404);
    const open = await turn(true);
    expect(open).toMatchObject({ shared: true, fingerprint: expect.stringMatching(/^([0-9A-F]{2}:){31}/) });
    const [port, ca] = [portOf(open), certificate()];
    const { code } = (await (await post('code')).json()) as { code: string };
    const origin = `https://localhost:${port}`;
    const paired = await ask(port, ca, phone(port, { origin }), { code, name: 'Phone' });
    expect(paired.status).toBe(201);
    const cookie = paired.headers['set-cookie']![0].split(';')[0];
    expect(paired.headers['set-cookie']![0]).toMatch(/; Secure/);
    expect((await ask(port, ca, phone(port, { cookie }))).status).toBe(200);
    expect(await turn(false)).toMatchObject({ shared: false, addresses: [], sessions: [{ name: 'Phone' }] });
    await expect(ask(port, ca, phone(port, { cookie }))).rejects.toThrow(/ECONNREFUSED/);
    const asked = await fetch(`${server!.address}/api/documents`, {
      headers: { cookie, 'x-forwarded-for': '192.0.2.7' },
    });
    expect(asked.status).toBe(401);
    expect((await post('code')).status).toBe(404);
  });

  test('stays as it was left, and so do those who were paired', async () => {
    await start();
    await turn(true);
    await server!.close();
    await start();
    const found = await sharing();
    expect(found.shared).toBe(true);
    expect((await ask(portOf(found), certificate(), phone(portOf(found)))).status).toBe(401);
    await turn(false);
    await server!.close();
    await start();
    expect((await sharing()).shared).toBe(false);
  });

  test('is this computer’s, and leaves alone how the program was started', async () => {
    await start();
    const elsewhere = await fetch(`${server!.address}/api/sharing/open`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-forwarded-for': '192.0.2.7' },
      body: '{"open":true}',
    });
    expect(elsewhere.status).toBe(401);
    expect((await sharing()).shared).toBe(false);
    await server!.close();
    await start({ share: true });
    expect(await sharing()).toMatchObject({ shared: true, switchable: false });
    expect((await post('open', { open: false })).status).toBe(409);
    expect((await sharing()).shared).toBe(true);
  });
});

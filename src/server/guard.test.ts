import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';

let bench: TestApp;
beforeAll(async () => {
  bench = await testApp();
});
afterAll(() => bench.close());

const build = { kind: 'build' };

describe('a request is turned away', () => {
  test.each([
    ['by a foreign name pointed at this server', { host: 'evil.example' }, 421],
    ['by another port', { host: 'localhost:81' }, 421],
    ['from a foreign page', { origin: 'https://evil.example' }, 403],
    ['from a page of another port', { origin: 'http://localhost:81' }, 403],
    ['from a page without an origin', { origin: 'null' }, 403],
    ['that the browser calls cross-site', { 'sec-fetch-site': 'cross-site' }, 403],
    ['that a form could have sent', { 'content-type': 'text/plain' }, 415],
    ['with a form', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
  ])('%s', async (_, headers: Record<string, string>, status) => {
    const before = await bench.counts();
    expect((await bench.ask('POST', '/api/documents', build, headers)).status).toBe(status);
    expect(await bench.counts()).toEqual(before);
  });
});

test('the own page is let in', async () => {
  const headers = { origin: 'http://localhost', 'sec-fetch-site': 'same-origin', host: 'localhost' };
  expect((await bench.ask('POST', '/api/documents', build, headers)).status).toBe(201);
});

test('every answer, of the API and of errors, forbids foreign scripts, frames and guessing of types', async () => {
  for (const path of ['/', '/api/documents', '/api/none', '/api/documents/none']) {
    const { headers } = await bench.ask('GET', path);
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('access-control-allow-origin')).toBeNull();
  }
});

test('what the API answers is not kept by the browser', async () => {
  expect((await bench.ask('GET', '/api/documents')).headers.get('cache-control')).toBe('no-store');
});

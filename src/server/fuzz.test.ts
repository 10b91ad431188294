import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { history } from '../../test/kit/arbitrary-record.ts';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';

/** Malformed requests made; more in a long run: FUZZ_REQUESTS=10000. */
const requests = Number(process.env.FUZZ_REQUESTS ?? 2000);

let bench: TestApp;
let build = '';
beforeAll(async () => {
  bench = await testApp();
  build = (await bench.keeper.create({ kind: 'build' })).id;
});
afterAll(() => bench.close());

/** What nobody sends by honest means. */
const nasty = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    -1,
    1e308,
    2 ** 53,
    '',
    '../../../etc/passwd',
    '<script>alert(1)</script>',
    '\u202Eltr',
    '\0',
    '\ud800',
    '🎣'.repeat(5000),
    'x'.repeat(10_000),
    [],
    {},
    { si: 'x', text: 1 },
    { __proto__: null, toString: 1 },
    "'; drop table operations; --",
  ),
  fc.jsonValue({ maxDepth: 3 }),
);

/** The routes that write, each with a good body to spoil. */
const writing = fc.record({ log: history, which: fc.nat(4) }).map(({ log, which }) => {
  const file = { format: 'fairbend build', version: 1, build: { about: {} }, history: log };
  return [
    { path: '/api/documents/BUILD/operations', body: { operations: log } },
    {
      path: '/api/documents',
      body: { kind: 'build', changes: log.map(({ path, value }) => ({ path, value })) },
    },
    { path: '/api/documents/BUILD/revisions', body: { engineVersion: '1' } },
    { path: '/api/files', body: file },
    { path: '/api/attachments', body: file },
  ][which];
});

const oddPath = fc.oneof(
  fc.constantFrom(
    '/api/documents/BUILD',
    '/api/documents/BUILD/operations?after=-1',
    '/api/documents/BUILD/operations?after=99999999999999999999',
    '/api/documents/BUILD/revisions/none',
    '/api/documents/BUILD/file',
    '/api/documents/BUILD/put-away/x',
    '/api/documents/nowhere/operations',
    '/api/documents/__proto__/copy',
    '/api/documents?limit=1e9&offset=-5&search=%25%5c_%27',
    '/api/attachments/none',
    '/api/attachments/%00',
    '/api/documents?search=%00',
    '/api/events',
    '/api/events?after=nowhere:0',
    '/api/events?after=%00',
    '/api/demo/reset',
    '/api/shop/none',
    '/..%2f..%2fetc/passwd',
    '/assets/../../package.json',
  ),
  fc.webPath().map((text) => `/api/documents/${text}`),
);

/** The good body; one with a thing in it replaced or left out; one cut short; something else; plain bytes. */
const malformed = (good: unknown) =>
  fc.oneof(
    { weight: 1, arbitrary: fc.constant(JSON.stringify(good)) },
    {
      weight: 6,
      arbitrary: fc
        .tuple(fc.nat(), fc.option(nasty, { nil: undefined }))
        .map(([at, by]) => JSON.stringify(spoil(structuredClone(good), at, by))),
    },
    {
      weight: 1,
      arbitrary: fc.nat(JSON.stringify(good).length).map((at) => JSON.stringify(good).slice(0, at)),
    },
    { weight: 1, arbitrary: nasty.map((json) => JSON.stringify(json)) },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 200 }) },
  );

const target = fc.oneof(
  { weight: 6, arbitrary: writing },
  { weight: 1, arbitrary: fc.record({ path: oddPath, body: nasty }) },
);
const request = target.chain(({ path, body }) =>
  fc.record({
    path: fc.constant(path),
    body: malformed(body),
    type: fc.oneof(
      { weight: 8, arbitrary: fc.constant('application/json') },
      { weight: 1, arbitrary: fc.constantFrom('application/octet-stream', 'text/plain', '') },
    ),
    method: fc.oneof(
      { weight: 8, arbitrary: fc.constant('POST') },
      { weight: 1, arbitrary: fc.constantFrom('GET', 'PUT', 'DELETE', 'PATCH', 'OPTIONS') },
    ),
  }),
);

test('no malformed request makes the server stumble, and a refused one stores nothing', async () => {
  const seen = new Map<number, number>();
  await fc.assert(
    fc.asyncProperty(request, async ({ method: how, path: where, body: what, type }) => {
      const before = await bench.counts();
      const sent = how === 'GET' || how === 'OPTIONS' ? undefined : what;
      const response = await bench.ask(how, where.replace('BUILD', build), sent, { 'content-type': type });
      const text = response.headers.get('content-type')?.startsWith('text/event')
        ? ''
        : await response.text();
      seen.set(response.status, (seen.get(response.status) ?? 0) + 1);
      expect(response.status, text).toBeLessThan(500);
      if (response.status >= 400) expect(await bench.counts()).toEqual(before);
      if (response.status >= 400 && where.startsWith('/api'))
        expect(JSON.parse(text).message.length).toBeGreaterThan(5);
    }),
    { seed: 20260301, numRuns: requests },
  );
  // Far from all may stop at the first hurdle, or the test would prove little.
  for (const status of [200, 201, 404, 409, 415, 422])
    expect(seen.get(status) ?? 0, JSON.stringify([...seen])).toBeGreaterThan(5);
});

/** Walks `at` steps through the objects of `json` and puts `by` there. */
function spoil(json: unknown, at: number, by: unknown): unknown {
  const places: [Record<string, unknown>, string][] = [];
  const walk = (value: unknown) => {
    if (value === null || typeof value !== 'object') return;
    for (const key of Object.keys(value)) {
      places.push([value as Record<string, unknown>, key]);
      walk((value as Record<string, unknown>)[key]);
    }
  };
  walk(json);
  const place = places[at % Math.max(1, places.length)];
  if (!place) return by;
  if (by === undefined) delete place[0][place[1]];
  else place[0][place[1]] = by;
  return json;
}

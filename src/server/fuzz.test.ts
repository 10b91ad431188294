import fc from 'fast-check';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
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

interface Target {
  path: string;
  body: unknown;
  /** As the route takes it; without it, mostly POST. */
  method?: string;
}

/** Every route there is, by the app's own list: one that is added is fuzzed without a word here. */
function routesOf({ app }: TestApp): { method: string; path: string }[] {
  const named = app.routes.filter(
    ({ method, path }) => path.startsWith('/api/') && !path.includes('*') && method !== 'ALL',
  );
  return [...new Map(named.map(({ method, path }) => [`${method} ${path}`, { method, path }])).values()];
}

const placeholder = fc.oneof(
  { weight: 3, arbitrary: fc.constant('BUILD') },
  {
    weight: 2,
    arbitrary: fc.constantFrom('shop', 'none', '-', '.', '..', '%2e%2e%2f', '%00', '%ff', 'x'.repeat(3000)),
  },
  { weight: 1, arbitrary: fc.webSegment().map((text) => text || '-') },
);
const query = fc.oneof(
  { weight: 3, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: fc.webQueryParameters().map((text) => `?${text}`) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '?after=%f0%9f',
      '?limit=-1&offset=1e99',
      '?search=%',
      '?kind=shop&tags=,,',
      '?a[]=1&a[]=2',
    ),
  },
);

/** A route with odd names in its places and an odd query. */
function anyRoute(routes: readonly { method: string; path: string }[]): fc.Arbitrary<Target> {
  return fc
    .record({
      route: fc.constantFrom(...routes),
      names: fc.array(placeholder, { minLength: 4, maxLength: 4 }),
      query,
      body: nasty,
    })
    .map(({ route, names, query: asked, body }) => {
      let place = 0;
      const path = route.path.replace(/:\w+(\{[^}]*\})?/g, () => names[place++ % names.length]) + asked;
      return { path, body, method: route.method };
    });
}

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
const writing: fc.Arbitrary<Target> = fc.record({ log: history, which: fc.nat(5) }).map(({ log, which }) => {
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
    { path: '/api/jobs', body: { kind: 'learn series', input: { series: '9 ft' } } },
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

const target = (routes: readonly { method: string; path: string }[]): fc.Arbitrary<Target> =>
  fc.oneof(
    { weight: 6, arbitrary: writing },
    { weight: 1, arbitrary: fc.record({ path: oddPath, body: nasty }) },
    { weight: 4, arbitrary: anyRoute(routes) },
  );
const request = (routes: readonly { method: string; path: string }[]) =>
  target(routes).chain(({ path, body, method }) =>
    fc.record({
      path: fc.constant(path),
      body: malformed(body),
      type: fc.oneof(
        { weight: 8, arbitrary: fc.constant('application/json') },
        { weight: 1, arbitrary: fc.constantFrom('application/octet-stream', 'text/plain', '') },
      ),
      method: fc.oneof(
        { weight: 8, arbitrary: fc.constant(method ?? 'POST') },
        { weight: 1, arbitrary: fc.constantFrom('GET', 'PUT', 'DELETE', 'PATCH', 'OPTIONS') },
      ),
    }),
  );

test('no malformed request makes the server stumble, and a refused one stores nothing', async () => {
  const routes = routesOf(bench);
  const untouched = new Set(routes.map(({ method, path }) => `${method} ${path}`));
  const seen = new Map<number, number>();
  const complaints: unknown[] = [];
  const said = vi.spyOn(console, 'error').mockImplementation((...words) => void complaints.push(words));
  await fc.assert(
    fc.asyncProperty(request(routes), async ({ method: how, path: where, body: what, type }) => {
      const before = await bench.counts();
      const sent = how === 'GET' || how === 'OPTIONS' ? undefined : what;
      const path = where.replaceAll('BUILD', build);
      const response = await bench.ask(how, path, sent, { 'content-type': type });
      for (const route of untouched) if (fits(route, how, path)) untouched.delete(route);
      const stream = response.headers.get('content-type')?.startsWith('text/event');
      if (stream) await response.body!.cancel();
      const text = stream ? '' : await response.text();
      seen.set(response.status, (seen.get(response.status) ?? 0) + 1);
      expect(response.status, `${how} ${path}: ${text} ${complaints.at(-1)}`).toBeLessThan(500);
      if (response.status >= 400) expect(await bench.counts()).toEqual(before);
      if (response.status >= 400 && where.startsWith('/api'))
        expect(JSON.parse(text).message.length).toBeGreaterThan(5);
    }),
    { seed: 20260301, numRuns: requests },
  );
  said.mockRestore();
  expect([...untouched], 'routes no request reached').toEqual([]);
  // Far from all may stop at the first hurdle, or the test would prove little.
  const wanted = Math.max(1, Math.floor(requests / 1000));
  for (const status of [200, 201, 404, 409, 415, 422])
    expect(seen.get(status) ?? 0, JSON.stringify([...seen])).toBeGreaterThanOrEqual(wanted);
}, 600_000);

function fits(route: string, method: string, path: string): boolean {
  const [wanted, pattern] = route.split(' ');
  const form = new RegExp(`^${pattern.replace(/:\w+(\{[^}]*\})?/g, '[^/]+')}$`);
  return wanted === method && form.test(path.split('?')[0]);
}

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

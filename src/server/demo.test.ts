import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';
import type { Path } from '../record/operation.ts';
import { plantDemo } from './demo.ts';
import { demoId, isOwn } from './keeper.ts';

const title: Path = ['about', '-', 'title'];

let folder = '';
let file = '';
let bench: TestApp;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-demo-'));
  file = join(folder, 'demo.json');
  const build = {
    about: { title: 'An invented rod' },
    sections: [
      { id: 's1', name: 'tip' },
      { id: 's2', name: 'butt' },
    ],
  };
  writeFileSync(file, JSON.stringify({ format: 'fairbend build', version: 1, build }));
  bench = await testApp(file);
});
afterEach(async () => {
  await bench.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Values that stand, rows put away or cleared left out. */
async function values(): Promise<Record<string, unknown>> {
  const { cells } = await bench.keeper.state(demoId);
  const entries = [...cells].map(([key, cell]) => [key, cell.value] as const);
  return Object.fromEntries(entries.filter(([key, value]) => value !== null && !key.endsWith('createdAt')));
}

test('is planted once and marked, whatever its file says', async () => {
  await plantDemo(bench.keeper, file);
  const planted = await bench.counts();
  await plantDemo(bench.keeper, file);
  expect(await bench.counts()).toEqual(planted);
  expect(await bench.keeper.findOrThrow(demoId)).toMatchObject({ title: 'An invented rod', demo: true });
});

test('without a file there is none, and a reset says so', async () => {
  rmSync(file);
  await plantDemo(bench.keeper, file);
  expect(await bench.counts()).toMatchObject({ documents: 0 });
  expect((await bench.ask('POST', '/api/demo/reset', {})).status).toBe(404);
});

test('a reset brings back its values, keeps its history, and touches no other build', async () => {
  await plantDemo(bench.keeper, file);
  const { id: own } = await bench.keeper.create({ kind: 'build', changes: [{ path: title, value: 'Mine' }] });
  const fresh = await values();
  await bench.keeper.write(demoId, 'play', [
    { path: title, value: 'spoilt' },
    { path: ['sections', 's1', 'gone'], value: true },
    { path: ['sections', 'new', 'name'], value: 'added' },
    { path: ['about', '-', 'demo'], value: false },
  ]);
  expect((await bench.ask('POST', '/api/demo/reset', {})).status).toBe(200);
  expect(await values()).toEqual(fresh);
  expect((await bench.keeper.history(demoId)).map((operation) => operation.value)).toContain('spoilt');
  expect(await bench.keeper.findOrThrow(own)).toMatchObject({ title: 'Mine', lastSeq: 2 });
});

test('a copy of it is the builder’s own', async () => {
  await plantDemo(bench.keeper, file);
  const response = await bench.ask('POST', `/api/documents/${demoId}/copy`, {});
  expect(await response.json()).toMatchObject({
    title: 'An invented rod',
    demo: false,
    card: { copyOf: demoId },
  });
  expect(await bench.keeper.findOrThrow(demoId)).toMatchObject({ demo: true });
});

describe('demos of other rods', () => {
  beforeEach(() => {
    const build = { about: { title: 'An invented spinning rod', note: 'Invented.', rodKind: 'spinning' } };
    const text = JSON.stringify({ format: 'fairbend build', version: 1, build });
    writeFileSync(join(folder, 'demo-spinning.json'), text);
  });

  test('are offered, put on the shelf when asked for, and brought back', async () => {
    const offered = async () => (await (await bench.ask('GET', '/api/demos')).json()).demos;
    expect(await offered()).toEqual([
      { id: 'demo-spinning', title: 'An invented spinning rod', note: 'Invented.', shown: false },
    ]);
    const shown = await bench.ask('POST', '/api/demos/demo-spinning', {});
    expect(await shown.json()).toMatchObject({ id: 'demo-spinning', demo: true, rodKind: 'spinning' });
    expect(await offered()).toMatchObject([{ shown: true }]);
    await bench.keeper.write('demo-spinning', 'play', [{ path: title, value: 'spoilt' }]);
    await bench.keeper.repository.setGone('demo-spinning', true);
    expect(await offered()).toMatchObject([{ shown: false }]);
    const back = await bench.ask('POST', '/api/demos/demo-spinning', {});
    expect(await back.json()).toMatchObject({ title: 'An invented spinning rod', gone: false });
    expect(isOwn('demo-spinning')).toBe(false);
  });

  test.each(['demo-none', 'package', 'demo-..%2fdemo'])('%s is none of them', async (id) => {
    expect((await bench.ask('POST', `/api/demos/${id}`, {})).status).toBe(404);
  });
});

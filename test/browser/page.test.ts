import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, openBench } from './open-bench.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

test('the page comes up under its own security policy, asks nobody else for anything, and has no error', async () => {
  const page = await bench.openPage();
  await page.getByRole('main').waitFor();
  expect(await page.title()).toContain('Fairbend');
  expect(bench.complaints).toEqual([]);
});

test('the worker with all its physics stays within 64 kB compressed', () => {
  const assets = new URL('../../dist/web/assets/', import.meta.url);
  const workers = readdirSync(assets).filter((name) => /^worker-.*\.js$/.test(name));
  expect(workers).toHaveLength(1);
  expect(gzipSync(readFileSync(new URL(workers[0], assets))).length).toBeLessThanOrEqual(64_000);
});

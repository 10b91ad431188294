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

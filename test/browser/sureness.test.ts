import { afterAll, beforeAll, expect, test } from 'vitest';
import { openLayout } from './layout-page.ts';
import { type Bench, openBench } from './open-bench.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench.close());

test('under the headline stands how sure it is, and once guides are placed how often they beat the start', async () => {
  const { page } = await openLayout(bench);
  await page.getByText(/On 100 blanks that fit your readings: the largest line angle is/).waitFor();
  await page.getByRole('button', { name: /^Place the guides/ }).click();
  const line = page.getByText(/better than the start on \d+ of 100 of them/);
  await line.waitFor();
  const [, count] = /on (\d+) of 100 of them/.exec((await line.textContent()) ?? '') ?? [];
  expect(Number(count)).toBeGreaterThan(50);
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Change } from '../../src/record/operation.ts';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { openStep } from './open-step.ts';

/** Else a heavy weight asks for it first. */
const bound = { path: ['blank', '-', 'ferrulesBound'], value: true } satisfies Change;
let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

test('a read bench says what to read next; a tap lays it out and goes to the first drop', {
  timeout: 120_000,
}, async () => {
  const page = await openStep(bench, [...twoPieceChanges(), bound], 'blank');
  const part = page.getByRole('region', { name: 'What to read next' });
  const take = part.getByRole('button', { name: 'Lay these rows out' });
  await take.waitFor({ timeout: 100_000 });
  await part.getByText(/narrows guide \d+ most: from ±\S.* in to ±\S.* in/).waitFor();
  await part.getByText(/nough/).first().waitFor();
  await part.getByText('Mark by mark, and the next best readings').click();
  expect(await axeFindings(page)).toEqual([]);
  await take.click();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-path')), { timeout: 10_000 })
    .toMatch(/^readings\/.+\/drop$/);
  expect(bench.complaints).toEqual([]);
});

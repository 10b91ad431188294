import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'plan');
});
afterAll(() => bench?.close());

test('one stage is next, and a later one says what it waits for', async () => {
  const glue = page.getByRole('row', { name: /Glue the handle/ });
  await glue.getByRole('cell', { name: 'next', exact: true }).waitFor();
  await page.getByRole('row', { name: /Wrap.*waits: after Glue the handle,/ }).waitFor();
  expect(await page.getByRole('cell', { name: 'next', exact: true }).count()).toBe(1);
});

test('a tap logs a quarter of an hour on its stage', async () => {
  const tap = page.getByRole('button', { name: /1\/4 h for Glue the handle/ });
  await tap.click();
  await tap.click();
  await page.getByText('0.5 h logged').waitFor();
});

test('axe finds nothing on the plan', async () => {
  for (const width of [390, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
  }
  expect(bench.complaints).toEqual([]);
});

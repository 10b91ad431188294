import { readFileSync } from 'node:fs';
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

test('the bench sheet is one page', async () => {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Bench sheet as PDF' }).click();
  const bytes = readFileSync(await (await download).path()).toString('latin1');
  expect(bytes.match(/\/Type \/Page\b/g)).toHaveLength(1);
});

test('at the bench one piece of work stands alone, its buttons 64 px and more, and what is done stays done', async () => {
  await page.setViewportSize({ width: 820, height: 1180 });
  await page.getByRole('link', { name: 'One piece at a time' }).click();
  const card = page.getByRole('region', { name: 'The piece of work at hand' });
  await card.getByRole('heading', { name: /Mark guide 1,/ }).waitFor();
  const buttons = page.locator('.bench-buttons > *');
  for (const box of await buttons.all()) expect((await box.boundingBox())?.height).toBeGreaterThanOrEqual(64);
  await page.getByRole('button', { name: 'Done', exact: true }).click();
  await card.getByRole('heading', { name: /Mark guide 2,/ }).waitFor();
  await page.getByText('every change is on the disk').waitFor();
  await page.reload();
  await card.getByRole('heading', { name: /Mark guide 2,/ }).waitFor();
  await page.getByRole('button', { name: 'Back' }).click();
  await page.getByRole('button', { name: 'Not done after all' }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await page.goto(page.url().replace(/bench$/, 'plan'));
});

test('axe finds nothing on the plan', async () => {
  await page.getByRole('row', { name: /^Glue the handle/ }).waitFor();
  for (const width of [390, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
  }
  expect(bench.complaints).toEqual([]);
});

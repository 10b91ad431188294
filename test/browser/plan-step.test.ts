import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
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

const card = () => page.getByRole('region', { name: 'The piece of work at hand' });
const piece = (name: RegExp) => card().getByRole('heading', { name }).waitFor();

test('at the bench one piece of work stands alone with its drawing; Enter is Done from the first moment', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole('link', { name: 'One piece at a time' }).click();
  await piece(/Mark guide 1,/);
  await card()
    .getByRole('img', { name: /tip end left, with the place at 4/ })
    .waitFor();
  expect(await page.getByRole('navigation', { name: 'Steps of the build' }).count()).toBe(0);
  expect(await page.title()).toMatch(/^At the bench · Invented two-piece/);
  await page.keyboard.press('Enter');
  await piece(/Mark guide 2,/);
  await page.getByRole('button', { name: 'Skip' }).click();
  await piece(/Mark guide 3,/);
  await card().getByText('1 before it still open').waitFor();
  await page.keyboard.press('Enter');
  await piece(/Mark guide 4,/);
});

test('what is done stays done, what was skipped comes again', async () => {
  await expect.poll(() => savedDeeds(), { timeout: 10_000 }).toBe(2);
  await page.reload();
  await piece(/Mark guide 2,/);
  await page.getByRole('button', { name: 'Back' }).click();
  await page.getByRole('button', { name: 'Not done after all' }).waitFor();
  await page.getByRole('button', { name: 'Next piece' }).click();
  await piece(/Mark guide 2,/);
  expect(await axeFindings(page)).toEqual([]);
});

test('Done is the largest to press and stays in sight, with larger letters and at 200 % too', async () => {
  const inSight = async () => {
    const box = async (name: string) => page.getByRole('button', { name, exact: true }).boundingBox();
    const [done, skip] = [await box('Done'), await box('Skip')];
    if (!done || !skip) throw new Error('Done and Skip have no place on the screen');
    expect(done.y + done.height).toBeLessThan(skip.y + 1);
    expect(skip.y + skip.height).toBeLessThanOrEqual((page.viewportSize()?.height ?? 0) + 1);
    expect(done.width * done.height).toBeGreaterThan(2.5 * skip.width * skip.height);
    expect(done.height).toBeGreaterThanOrEqual(58);
  };
  await inSight();
  await page.getByRole('button', { name: 'Larger on this device' }).click();
  await inSight();
  await page.setViewportSize({ width: 195, height: 422 });
  await inSight();
  await page.getByRole('button', { name: 'Smaller on this device' }).click();
  await page.setViewportSize({ width: 1440, height: 900 });
  await inSight();
  await page.goto(page.url().replace(/bench$/, 'plan'));
});

/** Pieces that the server holds as ticked off. */
async function savedDeeds(): Promise<number> {
  const id = /builds\/([^/]+)/.exec(page.url())?.[1];
  const answer = await fetch(`${bench.server.address}/api/documents/${id}/operations`);
  return (await answer.text()).match(/"doneAt"/g)?.length ?? 0;
}

test('axe finds nothing on the plan', async () => {
  await page.getByRole('row', { name: /^Glue the handle/ }).waitFor();
  await expectWell(page, [
    [390, 'light'],
    [1440, 'light'],
  ]);
  expect(bench.complaints).toEqual([]);
});

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'guides');
});
afterAll(() => bench?.close());

test('a knot too thick for a ring is named with the guide', async () => {
  await fill(page, 'Thickest knot that must pass', '3.3 mm');
  await page
    .getByText(/does not pass guide 1, which opens/)
    .first()
    .waitFor();
  await fill(page, 'Thickest knot that must pass', '2 mm');
  await page
    .getByText(/does not pass guide 1/)
    .first()
    .waitFor({ state: 'detached' });
});

test('the straight guide goes to the tip though it was looked at second; what is missing is ordered', async () => {
  const size = (await page.getByRole('table').last().getByRole('rowheader').first().textContent()) ?? '';
  const plus = (name: string) => page.getByRole('button', { name: `+ ${name}, size ${size}`, exact: true });
  await plus('slightly out').click();
  await plus('straight').click();
  const tipPlace = page.getByRole('region', { name: 'Rack' }).getByRole('row').nth(1);
  await tipPlace.getByRole('cell', { name: '2', exact: true }).waitFor();
  await page.getByText(/Not enough fit ones\. Order/).waitFor();
});

test('a cracked one goes back with its reason', async () => {
  await page
    .getByRole('button', { name: /^\+ put aside/ })
    .first()
    .click();
  await page.getByText(/^3 \(.*cracked plating/).waitFor();
});

test('axe finds nothing on the guides', async () => {
  for (const width of [390, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
  }
  expect(bench.complaints).toEqual([]);
});

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell, usualLooks } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'plan');
});
afterAll(() => bench?.close());

test('a repair without a build on record: what came in, a picture, the tube and the guides, price and promise', async () => {
  await page.goto(bench.server.address);
  await page.getByRole('button', { name: 'New repair' }).click();
  await page.waitForURL(/\/repairs\//);
  await fill(page, 'The rod', 'Green 9 ft 5-weight');
  await fill(page, 'Customer', 'An invented angler');
  await page.getByRole('combobox', { name: 'What is broken' }).selectOption('tip');
  await fill(page, 'Blank gone from the tip', '3 in');
  await fill(page, 'Diameter at the break', '1.9 mm');
  await page.getByText(/Tip-top with a tube of 5\/64 in/).waitFor();
  await fill(page, 'Guides from the old tip, down the rod', '4 8 1/2 13 1/2 19 25 31 1/2 38 1/2 46 54 63 73');
  await page.getByRole('row', { name: /^1 / }).waitFor();
  await fill(page, 'Price', '45.50');
  await fill(page, 'Promised for', '2026-12-01');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Add a picture' }).click();
  await (await chooser).setFiles('docs/figures/layout-sheet.png');
  await page.getByRole('img', { name: 'layout-sheet.png' }).waitFor();
  await page.getByText('every change is on the disk').waitFor();
});

test('the label is one page', async () => {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Label as PDF' }).click();
  const bytes = readFileSync(await (await download).path()).toString('latin1');
  expect(bytes.match(/\/Type \/Page\b/g)).toHaveLength(1);
});

test('with the build on record its marks, bend and thread stand there', async () => {
  await page.getByRole('searchbox', { name: 'Built here? Find it on the shelf' }).fill('Invented two');
  await page.getByRole('button', { name: /Invented two-piece/ }).click();
  await page.getByText('On record as').waitFor();
  await page
    .getByRole('table')
    .getByRole('row', { name: /Swings/ })
    .waitFor();
  await page
    .getByRole('row', { name: /Weight for a drop of a third, held at the grip/ })
    .getByText(/\+\d+ %/)
    .waitFor();
  await page.getByText(/(Leave|Move) the (upper )?guides/).waitFor();
  await page
    .getByText(/Left as they are, closest to a limit near the tip: .* of .*\. Before the break: /)
    .waitFor();
  await page.getByRole('combobox', { name: 'What is broken' }).selectOption('guide');
  await fill(page, 'Which guide, counted from the tip', '2');
  await page.getByText(/its ring/).waitFor();
  await page.getByRole('region', { name: 'Its wraps' }).getByRole('row').nth(2).waitFor();
  await page.getByRole('combobox', { name: 'What is broken' }).selectOption('section');
  await fill(page, 'Which section, counted from the tip', '2');
  await fill(page, 'Length of the new one', '47 in');
  await page.getByText(/longer/).waitFor();
  await page
    .getByText(/(Place the guides of the new section anew|Keep the marks as they were).*closest to a limit/)
    .waitFor();
});

test('axe finds nothing on a repair, and what has changed is read without scrolling its table', async () => {
  await page.getByRole('combobox', { name: 'What is broken' }).selectOption('tip');
  const change = page.getByRole('region', { name: 'Before and after' }).getByRole('cell', { name: '%' });
  await expectWell(page, usualLooks, async (width) => {
    const { x, width: cell } = (await change.first().boundingBox())!;
    expect(x + cell).toBeLessThanOrEqual(width);
  });
});

test('it waits on the shelf, and is folded away once it was handed over', async () => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.getByRole('button', { name: 'Done today' }).click();
  await page.getByRole('button', { name: 'Handed over today' }).click();
  await page.getByText('every change is on the disk').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).press('Enter');
  await page.getByText('One that was handed over').click();
  await page.getByRole('link', { name: /Green 9 ft 5-weight/ }).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  expect(bench.complaints).toEqual([]);
});

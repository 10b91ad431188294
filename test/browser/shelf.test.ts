import { readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { type Bench, openBench } from './open-bench.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await bench.openPage('/', { viewport: { width: 1440, height: 900 }, acceptDownloads: true });
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

const onShelf = (title: string) => page.getByRole('listitem').filter({ hasText: title });

test('a shelf with nothing but the demo shows what it is for, until there is a build of one’s own', async () => {
  const welcome = page.getByRole('region', { name: 'How this blank bends, and where its guides go' });
  await welcome.getByText(/the line turns 1\d\.\d° at guide \d+, limit 15°/).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await welcome.getByRole('link', { name: 'Open the demo’s layout' }).click();
  await page.waitForURL(/builds\/demo\/layout$/);
  await page.goBack();
  await welcome.waitFor();
});

test('a build that was named stands on the shelf and is found by its customer', async () => {
  await page.getByRole('button', { name: 'New build' }).click();
  await page.getByRole('textbox', { name: 'Title' }).fill('Shelf test rod');
  await page.getByRole('textbox', { name: 'Customer' }).fill('An invented angler');
  await page.getByRole('textbox', { name: 'Customer' }).press('Enter');
  await page.getByText('every change is on the disk').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await onShelf('Shelf test rod').waitFor();
  expect(await page.getByText('Open the demo’s layout').count()).toBe(0);
  await page
    .getByRole('searchbox', { name: 'Find by title, customer, line, blank, note or tag' })
    .fill('invented angler');
  await onShelf('Shelf test rod').waitFor();
  await page.getByRole('searchbox').fill('nobody of that name');
  await page.getByText('No build has “nobody of that name”').waitFor();
  await page.getByRole('searchbox').fill('');
});

test('a build is found by a tag, its line weight and what is written on the blank; a tag comes off again', async () => {
  await onShelf('Shelf test rod').getByRole('link').first().click();
  await page.getByText('This build').click();
  await page.getByRole('textbox', { name: 'Tags' }).fill('club gift, willow');
  await page.getByRole('textbox', { name: 'Tags' }).press('Enter');
  await page.getByRole('textbox', { name: 'Line weight' }).fill('7 sinking');
  await page.getByRole('textbox', { name: 'Line weight' }).press('Enter');
  await page.getByRole('textbox', { name: 'Written on it' }).fill('Invented blank 7-96');
  await page.getByRole('textbox', { name: 'Written on it' }).press('Enter');
  await page.getByText('every change is on the disk').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  for (const words of ['WILLOW', '7 sinking', 'blank 7-96', 'gift rod']) {
    await page.getByRole('searchbox').fill(words);
    await onShelf('Shelf test rod').waitFor();
    await expect.poll(() => page.locator('.shelf-card').count()).toBe(1);
  }
  await page.getByRole('searchbox').fill('');
  await onShelf('Shelf test rod').getByRole('button', { name: 'club gift' }).click();
  expect(await page.getByRole('searchbox').inputValue()).toBe('club gift');
  await onShelf('Shelf test rod').getByRole('link').first().click();
  await page.getByText('This build').click();
  await page.getByRole('button', { name: 'willow, take this tag off' }).click();
  await page.getByText('every change is on the disk').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByRole('searchbox').fill('willow');
  await page.getByText('No build has “willow”').waitFor();
  await page.getByRole('searchbox').fill('');
});

test('a build saved as a file opens again as another build', async () => {
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save as a file (Shelf test rod)' }).click();
  const path = await (await download).path();
  expect(JSON.parse(readFileSync(path, 'utf8'))).toBeTypeOf('object');
  await openFile(path);
  await page.waitForURL(/\/builds\/.*\/blank$/);
  await page.getByRole('heading', { name: 'Shelf test rod' }).waitFor();
  await page.goto(bench.server.address);
  await expect.poll(() => onShelf('Shelf test rod').count()).toBe(2);
});

test.each([
  ['no build at all', '{"colour": "green"}'],
  ['no JSON', 'this is a letter'],
  ['far too deep', `${'['.repeat(200_000)}`],
])('a file that is %s is refused with reasons and changes nothing', async (_, text) => {
  const file = join(tmpdir(), 'fairbend-not-a-build.json');
  writeFileSync(file, text);
  await openFile(file);
  const refusal = page.getByRole('alertdialog');
  await refusal.getByText('was not opened').waitFor();
  expect((await refusal.textContent())?.length).toBeGreaterThan(60);
  await refusal.getByRole('button', { name: 'Very well' }).click();
  await expect.poll(() => onShelf('Shelf test rod').count()).toBe(2);
});

test('a build put away leaves the shelf and comes back', async () => {
  await page.getByRole('button', { name: 'Archive (Shelf test rod)' }).first().click();
  await expect.poll(() => onShelf('Shelf test rod').count()).toBe(1);
  await page.getByText('Archived', { exact: true }).click();
  await page.getByRole('button', { name: 'Bring back (Shelf test rod)' }).click();
  await page.getByText('Archived', { exact: true }).click();
  await expect.poll(() => onShelf('Shelf test rod').count()).toBe(2);
});

test('axe finds nothing on the shelf and in the settings, by day, by night and on the bench', async () => {
  for (const path of ['/', '/settings']) {
    await page.goto(bench.server.address + path);
    await page.getByRole('main').waitFor();
    if (path === '/') await onShelf('Shelf test rod').first().waitFor();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await axeFindings(page, colorScheme === 'light' ? 'all' : 'ink')).toEqual([]);
    }
  }
  await page.getByText('This device lies on the bench').click();
  expect(await axeFindings(page)).toEqual([]);
  expect(await page.getByText('inches', { exact: true }).boundingBox()).toMatchObject({ height: 76 });
});

test('no error other than the refusals asked for', () => {
  const refusals = bench.complaints.filter((line) => /status of 4\d\d/.test(line));
  expect(bench.complaints.length - refusals.length).toBe(0);
});

async function openFile(path: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a build file' }).click();
  await (await chooser).setFiles(path);
}

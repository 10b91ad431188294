import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild } from './open-step.ts';

/** A shop with two builds, and the empty one it moves to. */
let from: Bench;
let to: Bench;
let archive: Buffer;
beforeAll(async () => {
  [from, to] = [await openBench(), await openBench()];
  for (const title of ['Brook', 'Lake'])
    await addBuild(from, [{ path: ['about', '-', 'title'], value: title }]);
  const page = await from.openPage('/settings');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Save the whole shop as plain files' }).click(),
  ]);
  archive = readFileSync(await download.path());
});
afterAll(() => Promise.all([from?.close(), to?.close()]));

async function choose(page: Page, name: string, buffer: Buffer): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Take in a whole shop' }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: 'application/zip', buffer });
}

test('half an archive is refused in words on the page, and nothing is changed', async () => {
  const page = await to.openPage('/settings');
  await choose(page, 'half.zip', archive.subarray(0, archive.length / 2));
  const refused = page.getByRole('alert').filter({ hasText: 'half.zip was not taken in' });
  await refused.waitFor();
  expect(await refused.textContent()).toMatch(/cut short or damaged.*Nothing was changed/);
  await page.context().close();
});

test('a shop saved from Settings is taken in from Settings; other pages are told, and both shelves are equal', async () => {
  const shelf = await to.openPage('/builds/demo/blank');
  const page = await to.openPage('/settings');
  await choose(page, 'shop.zip', archive);
  await shelf.getByRole('heading', { name: 'This record was replaced by a backup' }).waitFor();
  await shelf.getByRole('button', { name: 'Load again' }).click();
  await shelf.goto(`${to.server.address}/`);
  for (const title of ['Brook', 'Lake']) await shelf.getByText(title, { exact: true }).first().waitFor();
});

test('where builds stand, Settings says why no shop is taken in, and what to do', async () => {
  const page = await from.openPage('/settings');
  const why = page.getByText(/This record holds 2 builds and repairs already/);
  await why.waitFor();
  await expectWell(
    page,
    [
      [390, 'light'],
      [1440, 'dark'],
    ],
    async () => {
      expect(await why.textContent()).toMatch(/two shops are not mixed.*--data FOLDER/);
      expect(await page.getByRole('button', { name: 'Take in a whole shop' }).count()).toBe(0);
    },
  );
});

test('the browsers complained of nothing but the refusal', () => {
  const refusal = /status of 422/;
  expect([...from.complaints, ...to.complaints].filter((line) => !refusal.test(line))).toEqual([]);
});

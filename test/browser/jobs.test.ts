import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { nameSeries } from '../kit/running-jobs.ts';
import { compileServer, type ServerProcess, startServer } from '../kit/server-process.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';

/** Jobs are worked in a thread of the compiled server, so that one is started beside the bench's own. */
const folder = mkdtempSync(join(tmpdir(), 'fairbend-jobs-page-'));
let bench: Bench;
let server: ServerProcess;
let page: Page;
beforeAll(async () => {
  compileServer();
  server = await startServer(folder);
  await nameSeries(server.address);
  bench = await openBench();
  page = await bench.openPage('/', { viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(60_000);
  await page.goto(`${server.address}/settings`);
});
afterAll(async () => {
  await bench?.close();
  await server?.end('SIGTERM');
  rmSync(folder, { recursive: true, force: true });
});

/** By keyboard, once the button can be pressed: it cannot until the server has said what runs already. */
const press = async (name: RegExp | string) => {
  await page.getByRole('button', { name, disabled: false }).waitFor();
  await page.getByRole('button', { name }).press('Enter');
};

test('a job is begun, shows how far it is and is called off, by keyboard', async () => {
  await press('Work through the shelf');
  await page.getByRole('progressbar', { name: 'How far the shelf is' }).waitFor();
  expect(await page.getByRole('button', { name: 'Work through the shelf' }).isDisabled()).toBe(true);
  await press(/^Call it off/);
  await page.getByText('Called off: the shelf.').waitFor();
});

test('what came out is a table that stands after a reload, at every width', async () => {
  await press('Work through the shelf');
  await page.getByRole('combobox', { name: 'Name of the series' }).fill('Invented 9 ft');
  await page.keyboard.press('Enter');
  await page.getByRole('progressbar', { name: 'How far the series “Invented 9 ft” is' }).waitFor();
  await page.reload();
  const shelf = page.getByRole('region', { name: 'How sure every build is' });
  expect(await shelf.getByRole('row').nth(1).textContent()).toMatch(
    /\d\.\d\d\d\.\d\d to \d\.\d\d.* inup to \d+ %/,
  );
  const spread = page.getByRole('region', { name: 'Spread within the series' });
  await spread.waitFor();
  expect(await spread.getByRole('row').count()).toBe(1 + 7 + 1);
  await expectWell(page);
});

test('a series nobody has is said to be none', async () => {
  await page.getByRole('combobox', { name: 'Name of the series' }).fill('Nobody’s series');
  await press('Compare its blanks');
  await page.getByText(/No result for the series “Nobody’s series”: No blank of this series/).waitFor();
});

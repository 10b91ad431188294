import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DocumentSummary } from '../../src/record/api.ts';
import { type Bench, openBench } from './open-bench.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

async function newBuild(): Promise<string> {
  const response = await fetch(`${bench.server.address}/api/documents`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build' }),
  });
  return ((await response.json()) as DocumentSummary).id;
}

const customer = (page: Page) => page.getByRole('textbox', { name: 'Customer', exact: true });
const goTo = (page: Page, step: string) =>
  page.getByRole('navigation').getByRole('link', { name: step, exact: false }).first().click();

test('the page, its icon and what it is called can be put on a home screen', async () => {
  const manifest = await (await fetch(`${bench.server.address}/manifest.webmanifest`)).json();
  for (const { src, type } of manifest.icons) {
    const answer = await fetch(bench.server.address + src);
    expect([answer.status, answer.headers.get('content-type')], src).toEqual([200, type]);
  }
  expect(manifest.start_url).toBe('/');
});

test('with the server away every step opens, and a reload still brings the page', async () => {
  const id = await newBuild();
  const page = await bench.openPage(`/builds/${id}/blank`, { serviceWorkers: 'allow' });
  await customer(page).waitFor();
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state !== 'activated')
      await new Promise((resolve) => active?.addEventListener('statechange', resolve, { once: true }));
  });
  await bench.stopServer();
  await customer(page).fill('Ødegård');
  await customer(page).blur();
  await page.getByText('kept in this browser').waitFor();
  for (const step of ['Finish', 'Wraps', 'Papers', 'Guides', 'Handle']) {
    await goTo(page, step);
    await page.waitForURL(new RegExp(`/${step.toLowerCase()}$`));
    expect(await page.getByText('not on this device yet').count(), step).toBe(0);
  }
  await page.reload();
  await page
    .getByText(/server cannot be reached/i)
    .first()
    .waitFor();
  await bench.restart();
  await page.goto(`${bench.server.address}/builds/${id}/blank`);
  await expect.poll(() => customer(page).inputValue()).toBe('Ødegård');
});

test('without a store of the page, a step that is not there says what to do and opens by itself', async () => {
  const id = await newBuild();
  const page = await bench.openPage('/');
  await page.route(/finish-step.*\.js/, (route) => route.abort());
  await page.goto(`${bench.server.address}/builds/${id}/blank`);
  await customer(page).waitFor();
  await goTo(page, 'Finish');
  await page.getByText('This step is not on this device yet').waitFor();
  await goTo(page, 'Blank');
  await customer(page).fill('Kept');
  await goTo(page, 'Finish');
  await page.getByText('This step is not on this device yet').waitFor();
  await page.unroute(/finish-step.*\.js/);
  await page.getByText('This step is not on this device yet').waitFor({ state: 'detached' });
  await page.getByRole('heading').first().waitFor();
  await goTo(page, 'Blank');
  expect(await customer(page).inputValue()).toBe('Kept');
});

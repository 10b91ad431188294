import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addFile, goToStep, openStep } from './open-step.ts';

const demo = fileURLToPath(new URL('../../examples/demo-build.json', import.meta.url));
let bench: Bench;
let page: Page;
/** Guides placed on ten blanks, twice: seconds on a free computer, minutes on a crowded one. */
vi.setConfig({ testTimeout: 300_000 });
beforeAll(async () => {
  bench = await openBench();
  const id = await addFile(bench, readFileSync(demo, 'utf8'));
  page = await bench.openPage(`/builds/${id}/layout`, { viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(120_000);
});
afterAll(async () => {
  await bench?.close();
  vi.resetConfig();
});

test('while the ± is worked out again the old one stands as such, and a moved guide is read meanwhile', async () => {
  await page.getByText(/placed anew on \d+ blanks/).waitFor();
  const guide = page.getByRole('slider', { name: /^guide 4(,|$)/ });
  const loads = page.getByRole('textbox', { name: 'Load 4' });
  await loads.fill('350 g');
  await loads.press('Enter');
  await page.getByText(/still of the build as it was; being worked out again/).waitFor();
  expect(await page.locator('.place-doubts .stale [data-doubt]').count()).toBeGreaterThan(5);
  const angle = page.locator('.guide-table tbody tr:nth-child(4) td:nth-of-type(4)');
  const before = await angle.textContent();
  for (let step = 0; step < 8; step++) await guide.press('ArrowRight');
  await expect.poll(() => angle.textContent(), { timeout: 60_000 }).not.toBe(before);
  await page.getByText(/placed anew on \d+ blanks/).waitFor();
  expect(await page.locator('.place-doubts .stale').count()).toBe(0);
});

test('without a reading no ± is claimed anywhere', async () => {
  const { build } = JSON.parse(readFileSync(demo, 'utf8')) as { build: Record<string, Row[]> };
  const changes = ['sections', 'diameters', 'guides'].flatMap((collection) =>
    build[collection].flatMap(({ id: row, ...fields }) =>
      Object.entries(fields).map(([field, value]) => ({ path: [collection, row, field] as const, value })),
    ),
  );
  const bare = await openStep(bench, changes as never, 'layout');
  bare.setDefaultTimeout(60_000);
  for (const [step, table] of [
    ['Layout', '.guide-table'],
    ['Marks', '.marks-table'],
  ]) {
    await goToStep(bare, step);
    await bare.locator(table).first().waitFor();
    await bare.getByText('No ± can be stated: nothing was hung on this blank yet.').waitFor();
    await bare.getByText(/^10$/).first().waitFor();
    const said = await bare.locator('main :is(td, p, h2, li)').allTextContents();
    expect(said.join('\n')).not.toMatch(/±\d/);
  }
  await bare.close();
});
type Row = { id: string } & Record<string, unknown>;

test('axe finds nothing with the ± shown, at three widths', async () => {
  await goToStep(page, 'Marks');
  await page.getByText(/placed anew on \d+ blanks/).waitFor();
  await expectWell(page, [
    [390, 'light'],
    [820, 'light'],
    [1440, 'light'],
  ]);
  expect(bench.complaints).toEqual([]);
});

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { SectionMarks } from '../../src/engine/sheets/marks-list.ts';
import { plusMinusOnTape } from '../../src/engine/sheets/marks-sheet.ts';
import { axeFindings } from './axe.ts';
import { type Bench, openBench } from './open-bench.ts';
import { openStep } from './open-step.ts';

const root = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const demo = root('examples/demo-build.json');
let bench: Bench;
let page: Page;
let id: string;
/** Guides placed on ten blanks, twice, and once by the command line: seconds on a free computer, minutes on a crowded one. */
vi.setConfig({ testTimeout: 300_000 });
beforeAll(async () => {
  bench = await openBench();
  page = await bench.openPage('/', { viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(120_000);
  const sent = { data: readFileSync(demo, 'utf8'), headers: { 'content-type': 'application/json' } };
  const answer = await page.request.post(`${bench.server.address}/api/files`, sent);
  ({ id } = ((await answer.json()) as { document: { id: string } }).document);
});
afterAll(() => bench?.close());

/** As a screen reader has it: `±1 5/8`. */
const spoken = (text: string) =>
  text
    .replace(/\s(\d+\/\d+)\d+⁄\d+/g, ' $1')
    .replace('± ', '±')
    .trim();

test('every mark that was found has its ± in the Marks list and the guide table, the report’s own numbers', async () => {
  await page.goto(`${bench.server.address}/builds/${id}/marks`);
  await page
    .getByText(/Best place ±: where the guide would stand, 95 of 100; placed anew on \d+ blanks/)
    .waitFor();
  const listed = await page.locator('.marks-table tbody tr:has(th) td:last-child .small').allTextContents();
  await page.goto(`${bench.server.address}/builds/${id}/layout`);
  await page.getByText(/placed anew on \d+ blanks/).waitFor();
  const table = await page.locator('.guide-table [data-doubt]').allTextContents();
  const command = [root('scripts/fairbend.mjs'), 'report', demo, '--json'];
  const report = JSON.parse(execFileSync(process.execPath, command, { encoding: 'utf8' })) as {
    marks: { sections: SectionMarks[] };
  };
  const told = report.marks.sections
    .flatMap(({ rows }) => rows)
    .map(({ plusMinusM }) => (plusMinusM === undefined ? '' : plusMinusOnTape(plusMinusM, '1/8 in')))
    .map((words) => words.replace('⁄', '/').replace(' in', ''));
  expect(told.filter((words) => words !== '').length).toBeGreaterThan(7);
  // the first guide and the stripping guide stand where the builder put them
  expect([told[0], told.at(-1)]).toEqual(['', '']);
  expect(listed.map(spoken)).toEqual(told);
  expect(table.map(spoken)).toEqual(told);
});

test('while the ± is worked out again the old one stands as such, and a moved guide is read meanwhile', async () => {
  await page.goto(`${bench.server.address}/builds/${id}/layout`);
  await page.getByText(/placed anew on \d+ blanks/).waitFor();
  const guide = page.getByRole('slider', { name: /^guide 4(,|$)/ });
  const loads = page.getByRole('textbox', { name: 'Load 4' });
  await loads.fill('350 g');
  await loads.press('Enter');
  await page.getByText(/still of the build as it was; being worked out again/).waitFor();
  expect(await page.locator('.guide-table .stale').count()).toBeGreaterThan(5);
  const angle = page.locator('.guide-table tbody tr:nth-child(4) td:nth-of-type(4)');
  const before = await angle.textContent();
  for (let step = 0; step < 8; step++) await guide.press('ArrowRight');
  await expect.poll(() => angle.textContent(), { timeout: 60_000 }).not.toBe(before);
  await page.getByText(/placed anew on \d+ blanks/).waitFor();
  expect(await page.locator('.guide-table .stale').count()).toBe(0);
});

test('without a reading no ± is claimed anywhere', async () => {
  const { build } = JSON.parse(readFileSync(demo, 'utf8')) as { build: Record<string, Row[]> };
  const changes = ['sections', 'diameters', 'guides'].flatMap((collection) =>
    build[collection].flatMap(({ id: row, ...fields }) =>
      Object.entries(fields).map(([field, value]) => ({ path: [collection, row, field] as const, value })),
    ),
  );
  for (const step of ['layout', 'marks']) {
    const bare = await openStep(bench, changes as never, step);
    bare.setDefaultTimeout(60_000);
    await bare.getByText('No ± can be stated: nothing was hung on this blank yet.').waitFor();
    await bare.getByText(/^10$/).first().waitFor();
    const said = await bare.locator('main :is(td, p, h2, li)').allTextContents();
    expect(said.join('\n')).not.toMatch(/±\d/);
    await bare.close();
  }
});
type Row = { id: string } & Record<string, unknown>;

test('axe finds nothing with the ± shown, at three widths', async () => {
  await page.goto(`${bench.server.address}/builds/${id}/marks`);
  await page.getByText(/placed anew on \d+ blanks/).waitFor();
  for (const width of [390, 820, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await axeFindings(page)).toEqual([]);
  }
  expect(bench.complaints).toEqual([]);
});

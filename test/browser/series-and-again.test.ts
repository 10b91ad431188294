import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Change } from '../../src/record/operation.ts';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
const series: Change[] = [
  { path: ['blank', '-', 'series'], value: 'Invented 46' },
  { path: ['blank', '-', 'label'], value: 'Invented blank' },
];
beforeAll(async () => {
  bench = await openBench();
  for (const drop of [880, 915]) await addBuild(bench, [...twoPieceChanges(), ...series, dropped(drop)]);
  page = await openStep(
    bench,
    [...twoPieceChanges(), ...series, { path: ['blank', '-', 'withSeries'], value: true }],
    'blank',
  );
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

/** Another blank of the series hangs a little further or less. */
function dropped(mm: number): Change {
  return { path: ['readings', 'q0', 'drop'], value: { si: mm / 1000, text: `${mm} mm` } };
}

test('the other blanks of the series are heard, and their spread is drawn and listed', async () => {
  await page.getByText('Read with what 2 measured blanks of its series say.').waitFor();
  const table = page.getByRole('region', { name: 'Spread within the series' });
  expect(await table.getByRole('row').count()).toBe(1 + 7 + 1);
  await table.getByText('like its series').first().waitFor();
  await page.setViewportSize({ width: 1440, height: 900 });
  expect(await axeFindings(page)).toEqual([]);
  if (process.env.SHOTS)
    await page.screenshot({ path: `${process.env.SHOTS}/series-1440.png`, fullPage: true });
  await page.getByText('Read this blank together').click();
  await page.getByText('Read with what').waitFor({ state: 'detached' });
});

test('of a large series the latest are heard, the page says how many are not, and leads to where all are', async () => {
  const large: Change = { path: ['blank', '-', 'series'], value: 'Invented many' };
  const changes = [...twoPieceChanges(), large];
  for (let blank = 0; blank < 14; blank++) await addBuild(bench, [...changes, dropped(880 + 3 * blank)]);
  const together: Change = { path: ['blank', '-', 'withSeries'], value: true };
  const next = await openStep(bench, [...changes, together], 'blank');
  next.setDefaultTimeout(60_000);
  await next.getByText(/The 12 blanks last edited are used here; 2 older/).waitFor();
  await next.getByText('12 other blanks measured').waitFor();
  await next.getByRole('link', { name: 'Settings, in the background' }).click();
  await next.getByRole('heading', { name: 'How alike the blanks of a series are' }).waitFor();
  await next.close();
});

test('same again: what was chosen is there, what was measured is not, and the old rod stands beside', async () => {
  await page.goto(bench.server.address);
  await page
    .getByRole('button', { name: /Same again/ })
    .first()
    .click();
  await page.waitForURL(/\/blank$/);
  await page.getByRole('heading', { name: 'Invented two-piece' }).waitFor();
  await page.getByText('the same again', { exact: true }).waitFor();
  const part = page.getByRole('region', { name: 'The rod it repeats' });
  await part.getByText('As soon as this blank is read').waitFor();
  await part
    .getByRole('region', { name: 'Marks side by side' })
    .getByRole('row', { name: /^6 60 in/ })
    .waitFor();
  await page.getByText('every change is on the disk').waitFor();
});

test('axe finds nothing beside an old rod', async () => {
  await expectWell(page);
  expect(bench.complaints).toEqual([]);
});

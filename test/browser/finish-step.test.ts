import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'finish');
});
afterAll(() => bench?.close());

test('the mix is no smaller than can be measured truly, and grows with a coarser syringe', async () => {
  await page.getByText(/^2\.5 \+ 2\.5 ml/).waitFor();
  await fill(page, 'Smallest mark of syringe or scale', '0.2');
  await page.getByText(/^5\.0 \+ 5\.0 ml/).waitFor();
  await fill(page, 'Parts of hardener', '0');
  await page
    .getByText(/The share of part B is 0/)
    .first()
    .waitFor();
  await fill(page, 'Parts of hardener', '1');
});

test('a warm room shortens the pot life; a cold one is warned of', async () => {
  await page.getByText(/of its 20 min at (23 °C|73 °F)/).waitFor();
  await fill(page, 'Room', '28 C');
  await page.getByText(/of its 14 min at (28 °C|82 °F)/).waitFor();
  await fill(page, 'Room', '11 C');
  await page
    .getByText(/At (11 °C|52 °F) the finish stays thick/)
    .first()
    .waitFor();
  await fill(page, 'Room', '23 C');
});

test('the first coat waits for its four checks; its times then stand by the clock', async () => {
  const coat = page.getByRole('button', { name: 'Coat 1 is brushed on now' });
  expect(await coat.isDisabled()).toBe(true);
  await page.getByRole('note', { name: 'What to do next' }).getByRole('button', { name: 'Go there' }).click();
  const first = page.getByRole('checkbox', { name: /^Guides on the line/ });
  expect(await first.evaluate((box) => box === document.activeElement)).toBe(true);
  for (const words of ['Guides on the line', 'Wraps packed', 'lies level', 'No dust']) {
    await page.locator('label.flag', { hasText: words }).click();
  }
  await coat.click();
  const times = page.getByRole('table', { name: /Coat 1/ });
  await times.waitFor();
  expect(await times.getByRole('row').count()).toBe(7);
  expect(await page.getByRole('button', { name: 'Coat 2 is brushed on now' }).isDisabled()).toBe(true);
});

test('an alarm that came due stands on every step, through a reload, until it is heard', async () => {
  const anHourAgo = new Date(Date.now() - 3_600_000);
  const local = new Date(anHourAgo.getTime() - anHourAgo.getTimezoneOffset() * 60_000)
    .toISOString()
    .slice(0, 16);
  await fill(page, 'Coat 1 brushed on', local);
  const alarm = page.getByRole('alert').getByText(/Coat 1: Stop brushing/);
  await alarm.waitFor();
  await page.getByText('every change is on the disk').waitFor();
  await page.goto(page.url().replace(/finish$/, 'handle'));
  await alarm.waitFor();
  await page.getByRole('button', { name: 'Heard' }).click();
  await alarm.waitFor({ state: 'detached' });
  await page.getByText('every change is on the disk').waitFor();
  await page.reload();
  await page.getByRole('heading', { name: 'Before glue' }).waitFor();
  expect(await alarm.count()).toBe(0);
  await page.goto(page.url().replace(/handle$/, 'finish'));
});

test('what went wrong with a coat stands at it with the usual remedy', async () => {
  await page.getByLabel('What went wrong with coat 1').selectOption('Bubbles');
  await page.getByText(/^Bubbles: .*Warm the bottles/).waitFor();
  await fill(page, 'Note on coat 1', 'batch two, lay level');
  await page.reload();
  await page.waitForFunction(() =>
    [...document.querySelectorAll('input')].some(({ value }) => value === 'batch two, lay level'),
  );
});

test('a coat in the future is refused at its field', async () => {
  await fill(page, 'Coat 1 brushed on', '2099-01-01 10:00');
  await page
    .getByText(/Coat 1 is dated in the future/)
    .first()
    .waitFor();
});

test('axe finds nothing on the finish', async () => {
  await expectWell(page, [
    [390, 'light'],
    [1440, 'light'],
  ]);
  expect(bench.complaints).toEqual([]);
});

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
  page = await openStep(bench, twoPieceChanges(), 'handle');
});
afterAll(() => bench?.close());

test('the tip-top’s tube is the smallest half size of 64ths that goes on, its neighbours beside it', async () => {
  // 1.6 mm at the tip: 4/64 in is 1.5875 mm and does not go on.
  await page
    .getByText(/^4\.5\/64 in \(0\.070 in\)/)
    .first()
    .waitFor();
  await page.getByText(/Keep at hand/).waitFor();
});

test('grip and seat give reaming steps and arbors with their glue gap', async () => {
  await fill(page, 'Grip’s length', '6 in');
  await fill(page, 'Grip’s bore', '1/4 in');
  await page.getByRole('table', { name: /Ream the grip/ }).waitFor();
  await fill(page, 'Seat’s length', '3 in');
  await fill(page, 'Seat’s bore', '3/8 in');
  const rows = page.getByRole('table', { name: /Arbors/ }).getByRole('row');
  await rows.nth(3).waitFor();
  expect(await rows.count()).toBe(4);
});

test('a seat narrower than the blank, and a grip longer than there is room, are named at the field', async () => {
  await fill(page, 'Seat’s bore', '5 mm');
  await page
    .getByText(/Open the seat's insert/)
    .first()
    .waitFor();
  await fill(page, 'Seat’s bore', '16 mm');
  await page
    .getByText(/Fill the seat's gap with a turned bush/)
    .first()
    .waitFor();
  await fill(page, 'Seat’s bore', '3/8 in');
  await fill(page, 'Grip’s length', '14 in');
  await page
    .getByText(/Shorten the grip or move its front/)
    .first()
    .waitFor();
  await fill(page, 'Grip’s length', '6 in');
});

test('the reel moves the balance point towards the butt', async () => {
  const words = page.getByText(/All parts with a mass weigh/);
  const before = (await words.textContent()) ?? '';
  await fill(page, 'Mass of the reel with line', '130 g');
  await page.waitForFunction((text) => !document.body.textContent?.includes(text), before.slice(0, 40));
  const grams = /weigh ([\d.]+) g/.exec((await words.textContent()) ?? '')?.[1];
  const gramsBefore = /weigh ([\d.]+) g/.exec(before)?.[1];
  expect(Number(grams) - Number(gramsBefore)).toBeCloseTo(130, 1);
});

test('the glue waits until all four have been looked at', async () => {
  const glue = page.getByRole('button', { name: 'Glue is mixed now' });
  expect(await glue.isDisabled()).toBe(true);
  for (const words of ['slide home dry', 'reel foot stands', 'line runs true', 'tip-top stands']) {
    await page.locator('label.flag', { hasText: words }).click();
  }
  await glue.click();
  await page.getByText(/^Glued /).waitFor();
});

test('axe finds nothing on the handle', async () => {
  await expectWell(page, [
    [390, 'light'],
    [1440, 'light'],
  ]);
  expect(bench.complaints).toEqual([]);
});

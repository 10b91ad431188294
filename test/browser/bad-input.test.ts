import { encode } from 'fast-png';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { paintScan } from '../render/scan-sheet.ts';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
const hours = (count: number) => new Date(Date.now() - count * 3_600_000).toISOString();
beforeAll(async () => {
  bench = await openBench();
  const row = (collection: string, id: string, field: string, value: string | number) => ({
    path: [collection, id, field] as const,
    value,
  });
  const coats = [
    row('coats', 'c1', 'order', 0),
    row('coats', 'c1', 'brushedAt', hours(60)),
    row('coats', 'c2', 'order', 1),
    row('coats', 'c2', 'brushedAt', hours(30)),
  ];
  page = await openStep(bench, [...twoPieceChanges(), ...coats], 'handle');
});
afterAll(() => bench?.close());

/** What stands at the field itself. */
const saidAt = (path: string, words: RegExp) =>
  page
    .locator('.field', { has: page.locator(`[data-path="${path}"]`) })
    .locator('.field-trouble', { hasText: words });
const to = (step: string) => page.goto(page.url().replace(/[a-z-]+$/, step));

test('a grip past its section, a bore below the blank, negative room and a length below nothing, each at its field', async () => {
  await fill(page, 'Butt end to the front of the grip', '50 in');
  await saidAt(
    'handle/-/gripFront',
    /Set the grip's front further back, or take a shorter grip.* the butt section is/,
  ).waitFor();
  await fill(page, 'Butt end to the front of the grip', '9 1/4 in');
  await fill(page, 'Grip’s length', '14 in');
  await saidAt('handle/-/gripLength', /Shorten the grip or move its front.* its front is only/).waitFor();
  await fill(page, 'Grip’s length', '7 in');
  await fill(page, 'Seat’s length', '4 in');
  await saidAt(
    'handle/-/seatLength',
    /Move the grip's front .* forward, or take a seat of at most/,
  ).waitFor();
  await fill(page, 'Seat’s length', '2 in');
  await fill(page, 'Seat’s bore', '5 mm');
  await saidAt('handle/-/seatBore', /Open the seat's insert.* Its bore is .*, the blank under it/).waitFor();
  await fill(page, 'Seat’s bore', '-3 mm');
  await saidAt('handle/-/seatBore', /-3 mm/).waitFor();
  await page.getByRole('textbox', { name: 'Seat’s bore' }).press('Escape');
});

test('a tip-top is glued when it was looked at, and what is soft is not bent', async () => {
  const glue = page.getByRole('button', { name: 'Tip-top is glued now' });
  expect(await glue.isDisabled()).toBe(true);
  for (const words of ['line runs true', 'tip-top stands'])
    await page.locator('label.flag', { hasText: words }).click();
  await glue.click();
  await page.getByText(/^Tip-top glued /).waitFor();
  await to('load-test');
  await page.getByText(/Not to be bent before .*: the tip-top’s glue is still soft/).waitFor();
  await to('handle');
  await fill(page, 'Glue may be bent after', '1 min');
});

test('no turns to the inch, by the build or by the shop, is refused where it stands', async () => {
  await to('wraps');
  await fill(page, 'Turns counted', '0');
  await saidAt('wraps/-/turnsCounted', /Count the turns of thread in a measured width/).waitFor();
  await page.getByRole('button', { name: 'Use as the shop’s default' }).click();
  await fill(page, 'Turns counted', '');
  // The field is empty, but what the shop does in its place cannot be worked with.
  await saidAt('wraps/-/turnsCounted', /Count the turns of thread/).waitFor();
  await fill(page, 'Turns counted', '160');
  await saidAt('wraps/-/turnsCounted', /./).waitFor({ state: 'detached' });
});

test('a recoat in the past, and a density that mixing by mass needs, are asked for at their fields', async () => {
  await to('finish');
  const local = (iso: string) =>
    new Date(Date.parse(iso) - new Date(iso).getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
  await fill(page, 'Coat 2 brushed on', local(hours(70)));
  await saidAt(
    'coats/c2/brushedAt',
    /Coat 2 is dated before coat 1. Correct the one that is wrong/,
  ).waitFor();
  await fill(page, 'Coat 2 brushed on', local(hours(30)));
  await page.locator('label.choice-option', { hasText: 'mass' }).click();
  await saidAt('finish/-/ratioBy', /Is the ratio by volume or by mass/).waitFor();
  await page.getByRole('combobox', { name: 'Ratio stated by' }).selectOption('volume');
  await saidAt(
    'finish/-/densityA',
    /Give the density of both parts .*Or measure as the ratio is stated/,
  ).waitFor();
  await page.locator('label.choice-option', { hasText: 'volume' }).click();
});

test('guides that touch on a scan are named with where they lie, and none of them is measured', async () => {
  await to('guides');
  const sheet = paintScan({
    seed: 5,
    guides: 0,
    touchingPairs: 1,
    widthMm: 70,
    heightMm: 55,
    darkGround: false,
  });
  const { width, height, rgb: data } = sheet.picture;
  const buffer = Buffer.from(encode({ width, height, channels: 3, depth: 8, data }));
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'touching.png', mimeType: 'image/png', buffer }, { timeout: 60_000 });
  await page
    .getByText(/Lay the guides apart and scan again\. Two or more touch or overlap near pixel/)
    .waitFor({ timeout: 90_000 });
  expect(await page.getByRole('region', { name: 'Guides on the scan' }).count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Put them into the bag' }).count()).toBe(0);
});

test('a foot is ground only after the eye’s part, for it cannot be sent back', async () => {
  const bag = page.getByRole('region', { name: 'Guides in the bag' });
  await bag
    .getByRole('button', { name: /^\+ straight/ })
    .first()
    .click();
  const row = page.getByRole('region', { name: 'Each guide looked at' }).getByRole('row').nth(1);
  const ramp = row.getByRole('checkbox', { name: /^foot ramped/ });
  expect(await ramp.isDisabled()).toBe(true);
  for (const words of [/^plating whole/, /^not twisted/, /^ring smooth/]) {
    await row.locator('label.flag', { has: page.getByRole('checkbox', { name: words }) }).click();
  }
  await expect.poll(() => ramp.isDisabled()).toBe(false);
  expect(bench.complaints).toEqual([]);
});

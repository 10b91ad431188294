import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { cutTables, fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'wraps');
});
afterAll(() => bench?.close());

const yards = async () => {
  const words = await page
    .getByRole('list', { name: 'Thread needed' })
    .getByRole('listitem')
    .first()
    .textContent();
  return Number(/([\d.]+) yd/.exec(words ?? '')?.[1]);
};

test('every guide of two feet has its two wraps, each from its section’s own ends', async () => {
  const tip = page.getByRole('table', { name: /tip, 46 in long/ });
  await tip.waitFor();
  // Tip-top, five guides of two feet, and the sleeve.
  expect(await tip.getByRole('row').count()).toBe(1 + 1 + 10 + 1);
  await page
    .getByRole('table', { name: /butt, 46 in long/ })
    .getByRole('row', { name: /Winding check/ })
    .waitFor();
});

test('finer thread needs more of it; none counted is refused at the field', async () => {
  const before = await yards();
  await fill(page, 'Turns counted', '240');
  await page.waitForFunction(
    (old) => !document.body.textContent?.includes(`${old} yd with tags`),
    before.toFixed(1),
  );
  expect(await yards()).toBeGreaterThan(before * 1.2);
  await fill(page, 'Turns counted', '0');
  await page
    .getByText(/Count the turns of thread/)
    .first()
    .waitFor();
  await fill(page, 'Turns counted', '165');
});

test('a wrap too short for its locks, and a signature under the grip, are named', async () => {
  await fill(page, 'Turns over the tag (lock)', '40');
  await page
    .getByText(/turns cannot lock both tags under 40 each/)
    .first()
    .waitFor();
  await fill(page, 'Turns over the tag (lock)', '');
  await fill(page, 'Signature’s length', '100 mm');
  await fill(page, 'Signature from the butt end', '150 mm');
  await page
    .getByText(/It begins .* from the butt, under the grip/)
    .first()
    .waitFor();
  await fill(page, 'Signature from the butt end', '260 mm');
});

test('what is kept as the shop’s habit holds in a build that says nothing, and says where it comes from', async () => {
  await fill(page, 'Trim turns at each end', '6');
  await page.getByRole('button', { name: 'Use as the shop’s default' }).click();
  await page.getByText(/the shop’s default; see Settings/).waitFor();
  const other = await openStep(bench, twoPieceChanges(), 'wraps');
  const field = other.getByRole('textbox', { name: 'Trim turns at each end', exact: true });
  await field.waitFor({ timeout: 40_000 });
  expect(await field.getAttribute('placeholder')).toBe('6');
  await other.getByText('your shop’s').first().waitFor();
  await other.close();
});

test('the wrap sheet is one page', async () => {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Wrap sheet as PDF' }).click();
  const bytes = readFileSync(await (await download).path()).toString('latin1');
  expect(bytes.startsWith('%PDF-')).toBe(true);
  expect(bytes.match(/\/Type \/Page\b/g)).toHaveLength(1);
});

test('what changes after the print is said, with how much', async () => {
  await page.getByText(/The PDF is kept as revision/).waitFor();
  await fill(page, 'On the tip section', '7 mm');
  await page
    .getByText(/Since you printed the wrap sheet .*Guide 1, tip side is now (7 mm|9⁄32 in) long, was/)
    .waitFor();
});

test('axe finds nothing on the wraps, and no table of theirs is scrolled sideways', async () => {
  await expectWell(
    page,
    [
      [390, 'light'],
      [1440, 'light'],
      [820, 'dark'],
    ],
    async () => {
      expect(await cutTables(page)).toEqual([]);
    },
  );
  expect(bench.complaints).toEqual([]);
});

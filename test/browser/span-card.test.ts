import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'blank');
});
afterAll(() => bench?.close());

const card = () => page.getByRole('region', { name: 'Two supports', exact: true });
const next = () => page.getByRole('note', { name: 'What to do next' });
const put = async (label: string, text: string) => {
  const field = card().getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
};
const saidAt = (label: string, words: RegExp) =>
  card()
    .locator('.field', { has: page.getByRole('textbox', { name: label, exact: true }) })
    .locator('.field-trouble', { hasText: words });
/** Half width of the band on the stiffness 60 in from the tip, in hundredths. */
const plusMinus = async () => {
  const rows = page.getByRole('table', { name: 'Stiffness EI along the blank' }).getByRole('row');
  const cells = await rows
    .filter({ hasText: /^(59|60|61)/ })
    .first()
    .getByRole('cell')
    .allTextContents();
  return Number(/^(\d+) %$/.exec(cells.at(-1) ?? '')?.[1]);
};

test('a stretch on two supports is laid out, and the page leads through its fields', async () => {
  await page.getByText('5 of 5 taken').waitFor();
  await page.getByText('Measure in another way as well').click();
  await page.getByRole('button', { name: 'Lay out the stretch on two supports' }).click();
  await next().getByText('Two supports: measure from the tip to the first support').waitFor();
  await next().getByRole('button', { name: 'Go there' }).click();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-path'))).toMatch(
    /^setups\/.+\/supportTipSide$/,
  );
  await put('Tip to the first support', '50 in');
  await put('Tip to the weight', '60 in');
  await put('Tip to the second support', '70 in');
  await next().getByText('Hang nothing yet, then read the sag').waitFor();
  await put('Sag with nothing hung', '0.1 mm');
  await next().getByText('say which weight you hang between them').waitFor();
});

test('two sags narrow the band on the stiffness there', async () => {
  await page.getByText(/Stiffness is known to ±/).waitFor();
  await page.getByText('The chart in figures').first().click();
  const before = await plusMinus();
  expect(before).toBeGreaterThan(5);
  const weight = card().getByRole('group', { name: 'Weight 2 of Two supports' });
  await weight.getByRole('textbox', { name: 'Weight hung' }).fill('500 g');
  await weight.getByRole('textbox', { name: 'Weight hung' }).press('Enter');
  // What the blocks' readings say of this stretch: F/4 ∫ x²/EI from either support to the middle, x from the support,
  // is 8.0 mm for 4.9 N with EI rising from 0.82 to 3.6 N·m² (Mohr's integral, taken by Simpson's rule).
  await put('Sag under 500 g', '8.1 mm');
  await page.getByText('7 of 7 taken').waitFor();
  await expect.poll(plusMinus).toBeLessThan(0.8 * before);
  expect(await card().locator('.field-trouble').allTextContents()).toEqual([]);
});

test('a sag that cannot be, a support out of order and what is no length are said at their fields, with the remedy', async () => {
  await put('Sag under 500 g', '300 mm');
  await saidAt('Sag under 500 g', /The blank cannot sag .* on a span of .*\. Check the unit/).waitFor();
  await put('Sag under 500 g', '8.1 mm');
  await put('Tip to the second support', '55 in');
  await saidAt(
    'Tip to the weight',
    /From the tip come a support, the load, the other support\. You gave/,
  ).waitFor();
  await put('Tip to the second support', '7 furlongs');
  await saidAt('Tip to the second support', /"7 furlongs" cannot be read as a length/).waitFor();
  await card().getByRole('textbox', { name: 'Tip to the second support' }).press('Escape');
  await put('Tip to the second support', '70 in');
  await expect.poll(() => card().locator('.field-trouble').count()).toBe(0);
});

test('axe finds nothing on the card, and nothing of it is wider than a telephone', async () => {
  await expectWell(page, [
    [390, 'light'],
    [390, 'dark'],
    [820, 'light'],
    [1440, 'light'],
  ]);
  expect(bench.complaints).toEqual([]);
});

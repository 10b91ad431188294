import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell, usualLooks } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { cutTables, fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'papers');
});
afterAll(() => bench?.close());

async function saved(button: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  return readFileSync(await (await download).path()).toString('latin1');
}

test('what has no price yet is named, and no sum stands for it', async () => {
  const sums = page.getByRole('table').filter({ hasText: 'To pay' });
  await page.getByText('The price shows here once there are parts or hours.').waitFor();
  await page.getByRole('button', { name: 'Begin with common hours' }).click();
  await page.getByText('The price shows here once an hour of the 9.5 h has a price.').waitFor();
  expect(await sums.count()).toBe(0);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await page.getByText('The price shows here once there are parts or hours.').waitFor();
});

test('the parts come from the build, with spares; prices make the sum', async () => {
  await page.getByRole('button', { name: 'Take the parts from the build' }).click();
  await page.getByRole('textbox', { name: 'Part 1', exact: true }).waitFor();
  const names = await page
    .getByRole('region', { name: 'Parts', exact: true })
    .getByRole('textbox')
    .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
  expect(names.filter((name) => name.startsWith('Tip-top'))).toHaveLength(3);
  await fill(page, 'Price of part 1', '210.50');
  await fill(page, 'Part 1', '=HYPERLINK("x")');
  await page.getByRole('button', { name: 'Begin with common hours' }).click();
  await fill(page, 'An hour of work', '45');
  await page.getByRole('row', { name: /^Work, 9.5 h EUR.427.50/ }).waitFor();
  await page.getByRole('row', { name: /^Parts EUR.210.50/ }).waitFor();
  await page.getByText(/Price not complete: it will be once \d+ parts have a price/).waitFor();
});

test('quote on one page, order as PDF and as a table that holds no formula', async () => {
  const quote = await saved('Quote as PDF');
  expect(quote.match(/\/Type \/Page\b/g)).toHaveLength(1);
  expect((await saved('Order as PDF')).startsWith('%PDF-')).toBe(true);
  const csv = await saved('Order as CSV');
  expect(csv).toMatch(/^\xEF\xBB\xBFwhat,for it,spare,from,each,amount with spares,currency\r\n"'=HYPERLINK/);
  expect(csv).toContain('210.5,210.5,EUR');
});

test('lot and dye, inspection and delivery stand in the record and on paper', async () => {
  await page.getByRole('button', { name: 'Take over from the order' }).click();
  await fill(page, 'Lot of part used 1', 'L-2026-4');
  await page.getByRole('button', { name: 'Lay out the inspection list' }).click();
  await page.getByRole('combobox', { name: 'Verdict on point 1', exact: true }).selectOption('not good');
  await page.getByText('Something failed. Fix it, and look again.').waitFor();
  await page.getByRole('combobox', { name: 'Verdict on point 1', exact: true }).selectOption('good');
  await fill(page, 'Handed to', 'An invented angler');
  const papers = await saved('Delivery papers as PDF');
  expect(papers.match(/\/Type \/Page\b/g)).toHaveLength(3);
});

test('the customer’s page is one file that shows the rod and nothing of the shop’s reckoning', async () => {
  await fill(page, 'Part used 1', 'Cork & <b>burl</b>');
  const file = await saved('Page for the customer');
  const html = Buffer.from(file, 'latin1').toString('utf8');
  const shown = await page.context().newPage();
  const asked: string[] = [];
  shown.on('request', ({ url }) => asked.push(url()));
  await shown.setContent(html);
  expect(asked).toEqual([]);
  await shown.getByRole('img', { name: /^The rod bent under/ }).waitFor();
  await shown.getByText('Cork & <b>burl</b>').waitFor();
  expect(await shown.getByRole('row', { name: /^6 / }).textContent()).toContain('60 in');
  const words = await shown.getByRole('main').textContent();
  expect(words).not.toMatch(/EUR|210\.50|\brate|overheads|reserve|deposit/i);
  for (const width of [390, 1440]) {
    await shown.setViewportSize({ width, height: 900 });
    const over = await shown.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(over).toBeLessThanOrEqual(0);
  }
  await shown.close();
});

test('at 820 a pale date is read whole, and the ring round its field covers no line beside it', async () => {
  await page.setViewportSize({ width: 820, height: 1180 });
  const day = page.getByRole('textbox', { name: 'Handed over on' });
  await day.focus();
  const [room, words, ring, gap] = await day.evaluate((field) => {
    const input = field as HTMLInputElement;
    const { font, paddingLeft, paddingRight, outlineWidth, outlineOffset } = getComputedStyle(input);
    const pen = document.createElement('canvas').getContext('2d')!;
    pen.font = font;
    const label = input.labels![0].getBoundingClientRect();
    return [
      input.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight),
      pen.measureText(input.placeholder).width,
      Number.parseFloat(outlineWidth) + Number.parseFloat(outlineOffset),
      input.getBoundingClientRect().top - label.bottom,
    ];
  });
  expect(words).toBeGreaterThan(50);
  expect(room).toBeGreaterThanOrEqual(words);
  expect(ring).toBeLessThanOrEqual(gap);
  await page.setViewportSize({ width: 1440, height: 900 });
});

test('labels are printed from the first free place of a begun sheet, tapped or chosen', async () => {
  await page.getByRole('combobox', { name: 'Labels' }).selectOption('letter-30');
  const sheet = page.getByRole('img', { name: /^30 places; 2 printed from place 1 on$/ });
  await sheet.waitFor();
  await page.locator('.labels-sheet rect').nth(28).click();
  await page.getByRole('img', { name: /^30 places; 2 printed from place 29 on$/ }).waitFor();
  expect(await page.getByRole('combobox', { name: 'First free place' }).inputValue()).toBe('29');
  expect(await page.locator('.label-printed').count()).toBe(2);
  await page.getByRole('combobox', { name: 'How many' }).selectOption('4');
  const labels = await saved('Labels as PDF');
  // Two fit on the begun sheet, two go on the next.
  expect(labels.match(/\/Type \/Page\b/g)).toHaveLength(2);
  const build = page.url().split('/')[4];
  const number = build
    .replace(/[^a-z0-9]/gi, '')
    .slice(0, 6)
    .toUpperCase();
  await page.getByText(`number ${number}`).waitFor();
});

test('axe finds nothing on the papers, and no table of theirs is scrolled sideways', async () => {
  await expectWell(page, usualLooks, async (width) => {
    expect(await cutTables(page), `at ${width}`).toEqual([]);
  });
  expect(bench.complaints).toEqual([]);
});

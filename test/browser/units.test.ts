import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild } from './open-step.ts';

let bench: Bench;
let page: Page;
let address: string;
beforeAll(async () => {
  bench = await openBench();
  const id = await addBuild(bench, twoPieceChanges());
  address = `${bench.server.address}/builds/${id}/blank`;
  page = await bench.openPage(`/builds/${id}/blank`, { viewport: { width: 820, height: 1100 } });
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

const overlap = () => page.getByRole('textbox', { name: 'Overlap when seated' });

/** Every stored quantity of the build, as the server has it. */
async function storedQuantities(): Promise<string[]> {
  const id = address.split('/').at(-2);
  const answer = await page.request.get(`${bench.server.address}/api/documents/${id}`);
  const { cells } = (await answer.json()) as { cells: [string, { value: unknown }][] };
  return cells
    .filter(([, { value }]) => typeof value === 'object' && value !== null)
    .map(([key, { value }]) => `${key} ${JSON.stringify(value)}`)
    .sort();
}

async function shopReads(unit: 'inches' | 'millimetres'): Promise<void> {
  await page.goto(`${bench.server.address}/settings`);
  await page.locator('.choice-option', { hasText: unit }).click();
  await page.goto(address);
  await overlap().waitFor();
}

test('switching units changes what a bare number means from then on, and no stored value', async () => {
  await overlap().fill('2.25');
  await overlap().press('Enter');
  await page.getByText('every change is on the disk').waitFor();
  const before = await storedQuantities();
  expect(before.some((line) => line.includes('"text":"2.25"'))).toBe(true);

  await shopReads('millimetres');
  expect(await overlap().inputValue()).toBe('2.25 in');
  expect(await storedQuantities()).toEqual(before);

  await shopReads('inches');
  expect(await overlap().inputValue()).toBe('2.25');
  expect(await storedQuantities()).toEqual(before);
});

test('a bare number typed in a millimetre shop is millimetres, and says so in an inch shop', async () => {
  await shopReads('millimetres');
  await overlap().fill('57');
  await overlap().press('Enter');
  await page.getByText('every change is on the disk').waitFor();
  await shopReads('inches');
  expect(await overlap().inputValue()).toBe('57 mm');
});

test('what two units could mean is asked about at the field, and a unit answers', async () => {
  await page.goto(address.replace(/blank$/, 'handle'));
  const reel = page.getByRole('textbox', { name: 'Mass of the reel with line' });
  const under = page.locator('.field', { has: reel }).locator('.field-line');
  await reel.fill('5');
  await reel.press('Enter');
  expect(await under.textContent()).toContain('5 g or 5 oz? Write the unit with it.');
  expect(await storedQuantities()).not.toContainEqual(expect.stringContaining('reelMass'));
  await reel.fill('5 oz');
  await reel.press('Enter');
  await page.getByText('every change is on the disk').waitFor();
  expect(await storedQuantities()).toContainEqual(expect.stringContaining('"text":"5 oz"'));
  expect(await page.getByRole('button', { name: /^Undo/ }).textContent()).toBe(
    'Undo: mass of the reel with line',
  );
});

test('a temperature is taken in either unit and shown in the shop’s', async () => {
  await page.goto(address.replace(/blank$/, 'finish'));
  const room = page.getByRole('textbox', { name: 'Room', exact: true });
  expect(await room.getAttribute('placeholder')).toBe('73 °F');
  for (const [typed, shown] of [
    ['22 C', '71.6 °F'],
    ['72', '72 °F'],
  ]) {
    await room.fill(typed);
    await room.press('Enter');
    await expect.poll(() => room.inputValue()).toBe(shown);
  }
});

test('ink on paper and chalk on slate are chosen in the settings and kept', async () => {
  const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  await page.goto(`${bench.server.address}/settings`);
  await page.locator('.choice-option', { hasText: 'chalk on slate' }).click();
  await page.goto(address);
  await overlap().waitFor();
  await expect.poll(paper).toBe('rgb(31, 39, 41)');
  await page.emulateMedia({ media: 'print' });
  await expect.poll(paper).toBe('rgb(255, 255, 255)');
  expect(bench.complaints).toEqual([]);
});

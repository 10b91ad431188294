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
  page = await bench.openPage('/', { viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

const field = (name: string | RegExp, nth = 0) => page.getByRole('textbox', { name }).nth(nth);
const next = () => page.getByRole('note', { name: 'What to do next' });

test('a new build says step by step what to do next', async () => {
  await page.getByRole('button', { name: 'New build' }).click();
  await next().getByText('Say how many sections').waitFor();
  await page.getByRole('button', { name: 'Lay out 2 sections' }).click();
  await next().getByText('Measure the whole length of tip').waitFor();
});

test('Enter keeps a value and goes to the next field; what was understood stands under it', async () => {
  await next().getByRole('button', { name: 'Go there' }).click();
  await page.keyboard.type(`3' 9 1/4"`);
  await page.locator('.field-line', { hasText: '= 1149.35 mm' }).waitFor();
  await page.keyboard.press('Enter');
  await page.keyboard.type('11,5 g');
  await page.keyboard.press('Enter');
  await page.keyboard.type('24 1/2');
  await page.keyboard.press('Enter');
  expect(await field('Length').inputValue()).toBe(`3' 9 1/4"`);
  expect(await field('Mass').inputValue()).toBe('11,5 g');
  expect(await field('Balance point').inputValue()).toBe('24 1/2');
});

test('what cannot be read stays as typed, names value and remedy, and writes nothing', async () => {
  const length = field('Length', 1);
  await length.fill('4 furlongs');
  await length.press('Enter');
  await page.getByText(/"4 furlongs" cannot be read as a length/).waitFor();
  expect(await length.getAttribute('aria-invalid')).toBe('true');
  await page.reload();
  await next().getByText('Measure the whole length of butt').waitFor();
  expect(await field('Length', 1).inputValue()).toBe('');
  expect(await field('Length').inputValue()).toBe(`3' 9 1/4"`);
});

test('a section far too long is refused at its field and the one kept stays', async () => {
  const length = field('Length', 1);
  await length.fill('3 ft 9 in');
  await length.press('Enter');
  await length.fill('45 m');
  await length.press('Enter');
  await page.getByText(/45 m = .* is outside what stands here/).waitFor();
  await length.press('Escape');
  expect(await length.inputValue()).toBe('3 ft 9 in');
});

test('a ferrule deeper than its section is named at the overlap', async () => {
  const overlap = field('Overlap when seated');
  await overlap.fill('50 in');
  await overlap.press('Enter');
  await page
    .getByText(/tip overlaps butt by 50 in/)
    .first()
    .waitFor();
  await overlap.fill('1 1/2 in');
  await overlap.press('Enter');
  await page.getByText(/overlaps butt by/).waitFor({ state: 'detached' });
});

test('undo takes the last change back, also after a reload', async () => {
  await page.reload();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(() => field('Overlap when seated').inputValue()).toBe('50 in');
  await page.getByRole('button', { name: /^Redo/ }).click();
  await expect.poll(() => field('Overlap when seated').inputValue()).toBe('1 1/2 in');
});

test('the protocol is laid out for this blank', async () => {
  for (const [index, text] of ['1.7 mm', '3.4 mm', '5.2 mm', '5.1 mm', '7 mm', '8.7 mm'].entries()) {
    await field(/^Diameter of/, index).fill(text);
    await field(/^Diameter of/, index).press('Enter');
  }
  await field('Mass', 1).fill('22 g');
  await field('Mass', 1).press('Enter');
  await next().getByText('Choose how to measure the bend').waitFor();
  await page.getByRole('button', { name: 'Lay out the ten-minute start' }).click();
  await next()
    .getByText(/Hang nothing yet, then read the drop at the tip/)
    .waitFor();
});

test('a weight too heavy for unbound ferrules leads to their tick, and from there to its drop', async () => {
  const [hung, drop] = [field('Weight hung', 1), field(/^Drop at tip/, 1)];
  const planned = await hung.inputValue();
  await hung.fill('900 g');
  await hung.press('Enter');
  const tick = page.locator('.gate input');
  const hasFocus = (of: typeof tick) => expect.poll(() => of.evaluate((at) => at === document.activeElement));
  await hasFocus(tick).toBe(true);
  expect(await drop.isDisabled()).toBe(true);
  // nor does Enter in the column before jump over it
  await field(/^Drop at tip/, 0).press('Enter');
  await hasFocus(tick).toBe(true);
  await page.keyboard.press('Space');
  await hasFocus(drop).toBe(true);
  await hung.fill(planned);
  await hung.press('Enter');
});

test('the rows of the protocol lead to a stiffness', async () => {
  await next().getByRole('button', { name: 'Go there' }).click();
  for (const text of ['2 in', '26 in', '20 in', '13 1/4 in', '4 3/4 in']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
  expect(await field(/^Drop at tip/, 1).inputValue()).toBe('26 in');
  await page.getByText(/Stiffness is known to ±/).waitFor();
});

test('a flag whose two tapes miss each other by an inch is named; what is read at the clamp has its row', async () => {
  const inches = async (label: RegExp) => {
    const [whole, part = '0/1'] = (await field(label).inputValue()).replace(' in', '').split(' ');
    const [above, below] = part.split('/').map(Number);
    return Number(whole) + above / below;
  };
  const clamp = await inches(/^Tip to the clamp/);
  const checks = page.getByLabel(/^Flag at .* from the clamp/);
  expect(await checks.count()).toBe(3);
  const stations = (await page.locator('.flag-checks .reading-word').allInnerTexts()).map((text) =>
    Number.parseFloat(text),
  );
  for (const index of [0, 1]) {
    await checks.nth(index).fill(`${clamp - stations[index] - index} in`);
    await checks.nth(index).press('Enter');
  }
  const odd = page
    .getByText(/again, from tip and clamp|In every test it reads as if/)
    .locator('visible=true');
  await odd.first().waitFor();
  await field(/^Height above the level line at the clamp/).fill('0.1 in');
  await field(/^Height above the level line at the clamp/).press('Enter');
  await checks.nth(1).fill(`${clamp - stations[1]} in`);
  await checks.nth(1).press('Enter');
  await odd.first().waitFor({ state: 'detached' });
  expect(await field(/^Height above the level line at the clamp/).inputValue()).toBe('0.1 in');
});

test('axe finds nothing on the blank, by day and by night, wide and narrow', async () => {
  await expectWell(page, [
    [390, 'light'],
    [1440, 'light'],
    [1440, 'dark'],
  ]);
  expect(bench.complaints).toEqual([]);
});

test('rows laid out but not read are no bad readings: the layout asks for one weight, the wraps for the layout', async () => {
  const unread = twoPieceChanges().filter(({ path }) => path[0] !== 'readings' && path[0] !== 'guides');
  const other = await openStep(bench, unread, 'layout');
  other.setDefaultTimeout(30_000);
  const toDo = other.getByRole('note', { name: 'What to do next' });
  await toDo.getByText(/Nothing was hung on this blank yet.*One weight on Blank/).waitFor();
  await other
    .getByRole('navigation', { name: 'Steps of the build' })
    .getByRole('link', { name: 'Wraps' })
    .click();
  await toDo.getByText(/guides have no mark yet/).waitFor();
  await toDo.getByRole('link', { name: 'Layout' }).waitFor();
});

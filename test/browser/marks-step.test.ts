import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { cutTables, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'marks');
});
afterAll(() => bench?.close());

test('every section is marked from its own two ends, and the two add up to its length', async () => {
  const tip = page.getByRole('table', { name: /tip, 46 in long/ });
  await tip.waitFor();
  const first = tip.getByRole('row').nth(1).getByRole('cell');
  expect(await first.nth(0).textContent()).toBe('4');
  expect(await first.nth(1).textContent()).toBe('42');
  const butt = page.getByRole('table', { name: /butt, 46 in long/ });
  // 60 in from the tip: the butt's own tip end stands at 46 − 2 in.
  expect(await butt.getByRole('row', { name: /^6/ }).getByRole('cell').nth(0).textContent()).toBe('16');
});

test('the tape’s step says what rounding does', async () => {
  await page.locator('.choice-option', { hasText: '1 mm' }).click();
  await page.getByText(/moves no mark by more than 0\.[0-5] mm/).waitFor();
  await page.locator('.choice-option', { hasText: '1/8 in' }).click();
  await page.getByText('Every mark is already on a tick of').waitFor();
});

test('strips come as a PDF of a frozen revision, and the print is in the record', async () => {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Strips as PDF' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^invented-two-piece-strips-(a4|letter)\.pdf$/);
  expect(
    readFileSync(await file.path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
  await page.getByText(/The PDF is kept as revision/).waitFor();
  await page.getByText('Measure the rules on the print').first().waitFor();
});

test('the screen says how the strips lie, in few words; longer paper takes fewer', async () => {
  const counted = async () =>
    Number(
      /(\d+) strips?,/.exec(
        (await page.locator('.part-head', { hasText: 'Strips' }).textContent()) ?? '',
      )?.[1],
    );
  const drawn = page.locator('.strips-plan-drawing .plan-paper');
  const onSheet = await counted();
  expect(await drawn.count()).toBe(onSheet);
  await page.getByRole('img', { name: /^tip: \d strips, \d joins, for guides 1, 2/ }).waitFor();
  // Every part stands open here; the pages as they print are folded for everybody else.
  const wordsIn = async (place: string) =>
    (await page.locator(place).allInnerTexts()).join(' ').split(/\s+/).length;
  expect((await wordsIn('main')) - (await wordsIn('.pages'))).toBeLessThan(350);
  const paper = page.getByRole('combobox', { name: 'Strips on' });
  await paper.selectOption('roll');
  await page.locator('.part-head', { hasText: '0 joins' }).waitFor();
  const onRoll = await counted();
  expect(onRoll).toBeLessThan(onSheet);
  const longest = page.getByRole('textbox', { name: 'Longest print' });
  await longest.fill('14 in');
  await longest.press('Enter');
  await page.waitForFunction((few) => document.querySelectorAll('.plan-paper').length > few, onRoll);
  await longest.fill('');
  await longest.press('Enter');
  await page.getByRole('img', { name: 'Page 1 of 1: strips at true size' }).waitFor();
  await paper.selectOption('letter');
});

test('what the printed rule measured corrects the next print; three per cent is called a setting', async () => {
  await page.getByRole('button', { name: 'Type in what they measured' }).click();
  const across = page.getByRole('textbox', { name: 'The 100 mm rule across measured' });
  await across.fill('99.5 mm');
  await across.press('Enter');
  await page.getByText('corrected by +0.50 % across').waitFor();
  await across.fill('94 mm');
  await across.press('Enter');
  await page.getByText(/over 3 % off is a print setting/).waitFor();
});

test('axe finds nothing on the marks', async () => {
  await expectWell(
    page,
    [
      [390, 'light'],
      [1440, 'light'],
    ],
    async (width) => {
      expect(await cutTables(page), `at ${width}`).toEqual([]);
    },
  );
  expect(bench.complaints).toEqual([]);
});

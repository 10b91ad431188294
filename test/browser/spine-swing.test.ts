import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addFile, fill, goToStep } from './open-step.ts';

const demo = new URL('../../examples/demo-build.json', import.meta.url);
let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  const id = await addFile(bench, readFileSync(demo, 'utf8'));
  page = await bench.openPage(`/builds/${id}/blank`, {
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
  });
  page.setDefaultTimeout(60_000);
});
afterAll(() => bench?.close());

const card = (name: string) => page.getByRole('region', { name: `Sweep and spine of ${name}`, exact: true });

test('what was turned says bow and stiffness apart, each with its ±, and plainly what is not significant', async () => {
  await card('Tip')
    .getByText(/Natural bow: the middle stands out [\d.]+ (mm|in) ±[\d.]+ (mm|in) toward \d+° ±\d+°/)
    .waitFor();
  await card('Tip')
    .getByText(/Stiffness difference: \d\.\d % ±\d\.\d %, softest with/)
    .waitFor();
  await card('Upper middle')
    .getByText(/No bow found/)
    .waitFor();
  await card('Upper middle')
    .getByText(/No spine found/)
    .waitFor();
  await card('Tip')
    .getByRole('img', { name: /Bow and stiffness of Tip round its circumference/ })
    .waitFor();
  await card('Tip').getByText('The drawing in figures').click();
  expect(await card('Tip').getByRole('table').getByRole('row').count()).toBe(9);
});

test('by keyboard: eight steps are laid out, filled row by row, and answered from the fourth on', async () => {
  const lower = card('Lower middle');
  await lower.getByRole('button', { name: 'Turn Lower middle in 8 steps' }).press('Enter');
  await lower.getByRole('textbox', { name: 'Second load' }).fill('500 g');
  await lower.getByRole('textbox', { name: 'Second load' }).press('Enter');
  // d = 4 mm (1 + 0.05 cos 2φ) under the weight, and a bow of 0.6 mm that is lowest with 90° down
  const sag = (degrees: number, loadMm: number) => {
    const turn = (degrees * Math.PI) / 180;
    return (loadMm * (1 + 0.05 * Math.cos(2 * turn)) + 0.6 * Math.cos(turn - Math.PI / 2)).toFixed(2);
  };
  await lower.getByRole('textbox', { name: /^Sag of Lower middle at 0° under nothing/ }).focus();
  for (let degrees = 0; degrees < 360; degrees += 45) {
    for (const loadMm of [0.2, 4.2]) {
      await page.keyboard.type(`${sag(degrees, loadMm)} mm`);
      await page.keyboard.press('Enter');
    }
    if (degrees === 90)
      await lower.getByText('3 of 8 steps read under both loads', { exact: false }).waitFor();
    if (degrees === 135) await lower.getByText(/From 4 of 8 steps/).waitFor();
  }
  await lower
    .getByText(/the middle stands out (0\.6 mm|0\.02[34] in) ±[\d.]+ (mm|in) toward (89|90|91)°/)
    .waitFor();
  await lower
    .getByText(/Stiffness difference: (9\.[5-9]|10\.[0-5]) % .* with (0|1|179)° or (180|181|359)° down/)
    .waitFor();
});

test('a dial read wrongly is named at its row and left out', async () => {
  const field = card('Lower middle').getByRole('textbox', {
    name: 'Sag of Lower middle at 180° under 500 g',
  });
  const right = await field.inputValue();
  await field.fill('6.9 mm');
  await field.press('Enter');
  await card('Lower middle')
    .getByText(/it is (2\.\d+ mm|0\.\d+ in) more than the other turns allow/)
    .first()
    .waitFor();
  await field.fill(right);
  await field.press('Enter');
  await card('Lower middle')
    .getByText(/than the other turns allow/)
    .waitFor({ state: 'detached' });
});

test('nothing chooses the line side; what the builder chose stands wherever the section does', async () => {
  const lower = card('Lower middle');
  await lower.getByText(/Not chosen\. Guides on the straightest axis/).waitFor();
  for (const [label, text] of [
    ['Line side', '270°'],
    ['Line side counted from', 'the red dot'],
    ['How you chose the line side', 'soft side, two loads'],
  ]) {
    await lower.getByRole('textbox', { name: label, exact: true }).fill(text);
    await lower.getByRole('textbox', { name: label, exact: true }).press('Enter');
  }
  const words = '270° from the red dot (soft side, two loads)';
  await lower.getByText(`Guides stand at ${words}.`).waitFor();
  await page.getByText(`Line side ${words}.`).waitFor();
  await page.getByText('every change is on the disk').waitFor();
  await goToStep(page, 'Marks');
  await page.getByRole('table').getByText(`line side ${words}`).waitFor();
  await page
    .locator('.page')
    .getByText(/Lower middle, strip 1 of \d.* line side 270° from the red dot/)
    .waitFor();
  await goToStep(page, 'Handle');
  await page.getByText(`Lower middle: line side ${words}`).waitFor();
  await page.getByText('Butt: no line side chosen', { exact: false }).waitFor();
});

test('bare blank and finished rod swing at stated frequencies, and a count is named where it disagrees', async () => {
  await goToStep(page, 'Blank');
  const table = page.getByRole('table', { name: /First and second frequency/ });
  const hz = async (row: string) => {
    const words = await table
      .getByRole('row', { name: new RegExp(`^${row}`) })
      .getByRole('cell')
      .first()
      .textContent();
    const [, first, plusMinus] = /^(\d\.\d+) Hz ±(\d\.\d+) Hz$/.exec(words ?? '') ?? [];
    return { first: Number(first), plusMinus: Number(plusMinus) };
  };
  await table.getByText(/Hz ±/).first().waitFor();
  const [bare, finished] = [await hz('Bare blank'), await hz('Finished rod')];
  expect(bare.plusMinus).toBeGreaterThan(0);
  expect(finished.first).toBeLessThan(bare.first - bare.plusMinus);
  await page.getByText(/Counted 3\.\d+ Hz ±0\.\d+ Hz, predicted 3\.\d+ Hz ±0\.\d+ Hz: they agree/).waitFor();
  await fill(page, 'Swings counted', '60');
  await page.getByText(/they disagree\. .*swings like a rod \d+ % stiffer or lighter,/).waitFor();
});

test('the tip load stands beside the lines, with its range and what it leaves open, and no verdict', async () => {
  const part = page.getByRole('region', { name: 'Line beside the blank' });
  await part
    .getByText(
      /Held at the grip, \d+ g at the tip drops it by a third .*; \d+ g to \d+ g on 95 of 100 blanks that fit your readings/,
    )
    .waitFor();
  expect(await part.getByRole('row').count()).toBe(6);
  await part.getByText(/Datum: the drop counts from where the tip hangs/).waitFor();
  expect(await part.textContent()).not.toMatch(/suits|recommend|should|best/i);
});

test('the sheet of turns prints', async () => {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Print the sheet of turns' }).click();
  expect((await download).suggestedFilename()).toMatch(/\.pdf$/);
});

test('axe finds nothing on the Blank step, by day and by night, at three widths, and nothing is cut off', async () => {
  await expectWell(page, [
    [390, 'dark'],
    [820, 'light'],
    [1440, 'light'],
  ]);
  expect(bench.complaints).toEqual([]);
});

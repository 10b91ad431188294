import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bench, openBench } from './open-bench.ts';
import { fill, goToStep } from './open-step.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench?.close());

const looks = [
  [390, 844, 'dark'],
  [1440, 900, 'light'],
  ...(process.env.WALKS === 'all' ? ([[820, 1180, 'light']] as const) : []),
] as const;

/** An invented 8 ft two-piece as a newcomer meets it: an empty shelf's button first, a strip in the hand last. */
test.each(looks)(
  'from a bare blank to strips, %d × %d, %s',
  async (width, height, colorScheme) => {
    const page = await bench.openPage('/', {
      viewport: { width, height },
      colorScheme,
      acceptDownloads: true,
    });
    page.setDefaultTimeout(30_000);
    const shown = (name: string) =>
      process.env.PICTURES
        ? page.screenshot({
            path: `${process.env.PICTURES}/${name}-${width}-${colorScheme}.png`,
            fullPage: true,
          })
        : undefined;
    await shown('1-shelf');
    await measureBlank(page);
    await page.getByText(/Stiffness is known to ±/).waitFor();
    await shown('2-blank');

    await goToStep(page, 'Handle');
    await fill(page, 'Butt end to the front of the grip', '10 in');
    await fill(page, 'Butt end to where the line leaves the reel', '2 1/2 in');
    await shown('3-handle');

    await goToStep(page, 'Layout');
    const place = page.getByRole('button', { name: /^Place the guides/, disabled: false });
    await place.waitFor();
    await shown('4-start');
    await place.click();
    await page.getByText('The guides stand as placed for this blank').waitFor();
    await page.getByText('every change is on the disk').waitFor();
    await shown('5-placed');

    await goToStep(page, 'Marks');
    const rows = page.getByRole('table', { name: /in long/ }).getByRole('row', { name: /^\d/ });
    await rows.first().waitFor();
    expect(await rows.count()).toBe(9);
    await shown('6-marks');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Strips as PDF' }).click();
    const pdf = readFileSync(await (await download).path());
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(bench.complaints).toEqual([]);
    await page.close();
  },
  120_000,
);

/** Sections, diameters and the ten-minute start, typed as the page leads. */
async function measureBlank(page: Page): Promise<void> {
  const field = (name: string | RegExp, nth = 0) => page.getByRole('textbox', { name }).nth(nth);
  const put = async (name: string | RegExp, nth: number, text: string) => {
    await field(name, nth).fill(text);
    await field(name, nth).press('Enter');
  };
  const next = page.getByRole('note', { name: 'What to do next' });
  await page.getByRole('button', { name: 'New build' }).click();
  await page.getByRole('button', { name: 'Lay out 2 sections' }).click();
  for (const [nth, length] of [`49 in`, `4' 1"`].entries()) await put('Length', nth, length);
  for (const [nth, mass] of ['10.5 g', '24 g'].entries()) await put('Mass', nth, mass);
  await put('Overlap when seated', 0, '2 in');
  for (const [nth, text] of ['1.7 mm', '3.4 mm', '5.1 mm', '5 mm', '6.9 mm', '8.7 mm'].entries()) {
    await put(/^Diameter of/, nth, text);
  }
  await next.getByText('Choose how to measure the bend').waitFor();
  await page.getByRole('button', { name: 'Lay out the ten-minute start' }).click();
  await next.getByRole('button', { name: 'Go there' }).click();
  for (const text of ['2 1/4 in', '28 in', '21 1/2 in', '14 1/2 in', '5 1/4 in']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
}

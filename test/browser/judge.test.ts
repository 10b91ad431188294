import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { type Bench, openBench } from './open-bench.ts';
import { openStep } from './open-step.ts';
import { strayGuide, tracedChanges } from './traced-build.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, tracedChanges(), 'load-test');
  page.setDefaultTimeout(60_000);
});
afterAll(() => bench?.close());

test('the taped-up rod is judged: every ring seen beside predicted, the stray guide named', async () => {
  const table = page.getByRole('table', { name: /^Under 120 g/ });
  await table.waitFor();
  expect(await table.getByRole('row').count()).toBe(8);
  await page.getByText(new RegExp(`Guide ${strayGuide} stands .* nearer the butt than its mark`)).waitFor();
  await page.getByText(/Leave it:|Brings the worst/).waitFor();
});

test('the bare blank’s curve gives a stiffness by itself, as a chart and in figures', async () => {
  await page.getByRole('img', { name: /photograph’s own in steps/ }).waitFor();
  await page.getByText('The second stiffness in figures').click();
  const table = page.getByRole('table', { name: /moment over curvature/ });
  expect(await table.getByRole('row').count()).toBeGreaterThan(2);
});

test('axe finds nothing, nothing is wider than the screen, and nothing was complained of', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const width of [390, 820, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await axeFindings(page)).toEqual([]);
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(beyond).toBeLessThanOrEqual(0);
      if (process.env.SHOTS) {
        await page.screenshot({
          path: `${process.env.SHOTS}/judge-${colorScheme}-${width}.png`,
          fullPage: true,
        });
      }
    }
  }
  expect(bench.complaints).toEqual([]);
});

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { goToStep, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'layout', { forcedColors: 'active' });
});
afterAll(() => bench?.close());

test('where the device sets the colours, what is chosen still differs from what is not', async () => {
  const loads = page.getByRole('radiogroup', { name: 'Load drawn' });
  await loads.waitFor();
  const ground = (selector: string) =>
    loads
      .locator(selector)
      .first()
      .evaluate((option) => getComputedStyle(option).backgroundColor);
  expect(await ground('.choice-option[data-selected]')).not.toBe(
    await ground('.choice-option:not([data-selected])'),
  );
});

test('going on to another step names it in the title and puts the focus at its head', async () => {
  await goToStep(page, 'Handle');
  await expect.poll(() => page.title()).toMatch(/^Handle · Invented two-piece/);
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Handle');
});

test('? shows the keys of the step, Escape closes them, and the step leads to its page of the manual', async () => {
  await page.keyboard.press('?');
  const keys = page.getByRole('dialog', { name: 'Keys' });
  await keys.getByText('keeps a value and goes to the next field').waitFor();
  await page.keyboard.press('Escape');
  await keys.waitFor({ state: 'detached' });
  const link = page.getByRole('link', { name: 'How to plan the handle' });
  const answer = await fetch(bench.server.address + (await link.getAttribute('href')));
  expect(answer.status).toBe(200);
  const text = await answer.text();
  expect(text).toContain('<h1>Plan the handle</h1>');
  const picture = /src="(pictures\/[^"]+)"/.exec(text)?.[1];
  const image = await fetch(`${bench.server.address}/manual/${picture}`);
  expect(image.headers.get('content-type')).toBe('image/png');
  expect(bench.complaints).toEqual([]);
});

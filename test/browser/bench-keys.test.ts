import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await bench.openPage('/settings', { viewport: { width: 820, height: 1180 }, hasTouch: true });
  page.setDefaultTimeout(30_000);
  await page.evaluate(() => localStorage.setItem('fairbend-bench', 'on'));
  const id = await addBuild(bench, twoPieceChanges());
  await page.goto(`${bench.server.address}/builds/${id}/blank`);
});
afterAll(() => bench?.close());

const key = (words: string) => page.locator('.key-pad').getByText(words, { exact: true });

test('large keys type a length as a tape reads it, and Next keeps it and goes on', async () => {
  const first = page.getByRole('textbox', { name: /^Drop at tip under 60 g/ });
  await first.tap();
  await first.selectText();
  for (const words of ['3', '5', '3/8', 'in']) await key(words).tap();
  expect(await first.inputValue()).toBe('35 3/8 in');
  await key('next').tap();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-path'))).toBe(
    'readings/q1/drop',
  );
  await page.getByText('every change is on the disk').waitFor();
  expect(await first.inputValue()).toBe('35 3/8 in');
});

test('the keys are 54 px and more, do not hide the field, and leave axe nothing to find', async () => {
  const box = await key('7').boundingBox();
  expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(54);
  const pad = await page.locator('.key-pad').boundingBox();
  const field = await page.locator('input:focus').boundingBox();
  expect((field?.y ?? 0) + (field?.height ?? 0)).toBeLessThan(pad?.y ?? 0);
  expect(await axeFindings(page)).toEqual([]);
  expect(bench.complaints).toEqual([]);
});

test('the keys go when no quantity is typed', async () => {
  await page.getByRole('textbox', { name: 'Name of section 1' }).tap();
  await page.locator('.key-pad').waitFor({ state: 'detached' });
});

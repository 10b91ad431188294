import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addFile } from './open-step.ts';

let bench: Bench;
let page: Page;
let id: string;
beforeAll(async () => {
  bench = await openBench();
  const demo = new URL('../../examples/demo-casting-spiral.json', import.meta.url);
  id = await addFile(bench, readFileSync(demo, 'utf8'));
  page = await bench.openPage(`/builds/${id}/layout`, { viewport: { width: 1440, height: 1100 } });
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

const ring = (guide: number) =>
  page.getByRole('slider', { name: `Round the blank: guide ${guide}`, exact: true });
const places = async () =>
  Promise.all([7, 8, 9, 10].map((guide) => ring(guide).getAttribute('aria-valuetext')));
const turnOf = (guide: number) =>
  page
    .getByRole('table', { name: 'Guides round the blank in figures' })
    .or(page.getByLabel('Guides round the blank in figures').getByRole('table'))
    .first()
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: String(guide), exact: true }) })
    .locator('[data-label="line turns"]');

describe('a casting rod whose line goes round the blank', () => {
  test('shows where each ring stands, and what the line and the hand have of it', async () => {
    await page.getByText(/The line clears the blank at every load/).waitFor();
    expect(await places()).toEqual([
      'under',
      '120° to the left of the top',
      '60° to the left of the top',
      'on top',
    ]);
    await page.getByText(/Pulled straight at 800 g, your hand holds [\d.]+ in·lb/).waitFor();
    await page.getByText(/measured with the bar/).waitFor();
  });

  test('a key turns a ring by 5°: the line turns otherwise in it, the field says so, Undo takes it back', async () => {
    const before = await turnOf(9).textContent();
    await ring(9).focus();
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect.poll(async () => (await places())[2]).toBe('80° to the left of the top');
    await expect.poll(() => page.getByLabel('Guide 9 from the top').inputValue()).toBe('80°');
    await expect.poll(() => turnOf(9).textContent()).not.toBe(before);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(async () => (await places())[2]).toBe('60° to the left of the top');
    await expect.poll(() => turnOf(9).textContent()).toBe(before);
  });

  test('a ring is dragged round; the reading follows before the hand lets go', async () => {
    const before = await turnOf(9).textContent();
    await ring(9).scrollIntoViewIfNeeded();
    const from = await ring(9).locator('.round-ring').boundingBox();
    const middle = await page.locator('.round-blank').boundingBox();
    if (!from || !middle) throw new Error('the view is not on the screen');
    const centre = { x: middle.x + middle.width / 2, y: middle.y + middle.height / 2 };
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(centre.x - 60, centre.y, { steps: 8 });
    await expect.poll(async () => (await places())[2]).toBe('90° to the left of the top');
    await expect.poll(() => turnOf(9).textContent()).not.toBe(before);
    await page.mouse.up();
    await expect.poll(() => page.getByLabel('Guide 9 from the top').inputValue()).toBe('90°');
    await page.getByRole('button', { name: /^Undo/ }).click();
  });

  test('to the right is the same in a mirror', async () => {
    const turn = await turnOf(9).textContent();
    await page.getByRole('radio', { name: 'to the right' }).check({ force: true });
    await expect.poll(async () => (await places())[1]).toBe('120° to the right of the top');
    await expect.poll(() => turnOf(9).textContent()).toBe(turn);
    await page.getByRole('button', { name: /^Undo/ }).click();
  });

  test('torque on top, under and in a spiral stand side by side, with no promise', async () => {
    await page.getByText('What your hand feels').click();
    const table = page.getByRole('table').filter({ hasText: 'rod rolled 10°' });
    await table.waitFor();
    expect(await table.getByRole('row').count()).toBe(1 + 4 * 3);
    const rolled = table.getByRole('row').filter({ hasText: '800 g' }).filter({ hasText: 'rolled' });
    expect(await rolled.textContent()).toMatch(/in·lb, pushes on.*in·lb, pushes back/);
    await page.getByText(/no promise that a rod will or will not roll over/).waitFor();
  });

  test('an angle that turns the line back is said, with how far the guide must go', async () => {
    const field = page.getByLabel('Guide 8 from the top');
    await field.fill('40');
    await field.press('Enter');
    await page
      .getByText(/the line would turn back\. Turn guide 8 on to 60° or more/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => page.getByText(/would turn back/).count()).toBe(0);
  });

  test('has nothing that assistive technology cannot use', async () => {
    expect(await axeFindings(page)).toEqual([]);
  });
});

test('the marks say how far round the blank each guide goes, and the strips how they are wrapped', async () => {
  await page.goto(`${new URL(page.url()).origin}/builds/${id}/marks`);
  const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: /^9 / }) });
  await expect.poll(() => row.first().textContent()).toMatch(/60° left, /);
  await page.getByText(/Draw two lines along each section/).waitFor();
  expect(await page.getByText(/lay the edge on the line under the blank/).count()).toBeGreaterThan(0);
});

test('a stiffness in twist of nought is refused at its field; readings of the bar give it', async () => {
  await page.goto(`${new URL(page.url()).origin}/builds/${id}/blank/stiffness`);
  await page.getByText(/Stiffness in twist 0\.1\d \(.*measured with the bar/).waitFor();
  const share = page.getByLabel('Stiffness in twist, share of that in bending');
  await share.fill('0');
  await share.press('Enter');
  await expect.poll(() => share.getAttribute('aria-invalid')).toBe('true');
  await page.getByText(/0\.01/).first().waitFor();
  await share.press('Escape');
});

test('a two-hander says what each hand gives, and a hand off the grip is said at its field', async () => {
  const demo = new URL('../../examples/demo-two-handed.json', import.meta.url);
  const own = await addFile(bench, readFileSync(demo, 'utf8'));
  await page.goto(`${new URL(page.url()).origin}/builds/${own}/layout`);
  await page.getByText(/At 900 g the lower hand holds the butt down with \d+ g/).waitFor();
  const upper = page.getByLabel('Butt end to the middle of the upper hand');
  await upper.fill('30 in');
  await upper.press('Enter');
  await page
    .getByText(/the grip ends at 22 in/)
    .first()
    .waitFor();
});

test('a fly rod sees nothing of it', async () => {
  await page.goto(`${new URL(page.url()).origin}/builds/demo/layout`);
  await page.getByRole('heading', { name: 'How many guides?' }).waitFor();
  expect(await page.getByText('Guides round the blank').count()).toBe(0);
  expect(await page.getByText('Guides on top, under or in a spiral').count()).toBe(0);
});

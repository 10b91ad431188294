import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { twoPieceChanges } from './invented-build.ts';
import { everyLook, expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'load-test');
});
afterAll(() => bench?.close());

const weight = 'Weight on the tip, never hung before';

test('the test is predicted at every ring, with its cautions', async () => {
  const table = page.getByRole('table', { name: /^Under/ });
  await table.waitFor();
  expect(await table.getByRole('row').count()).toBe(8);
  await page.getByText(/Outdoors look up first/).waitFor();
  await page.getByText(/eye protection on/).waitFor();
});

test('reference marks are printed from where the picture is prepared', async () => {
  await page.getByText('How to take the picture').click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Reference marks as PDF' }).click();
  const file = await (await download).path();
  const text = (await readFile(file)).toString('latin1');
  expect(text.slice(0, 5)).toBe('%PDF-');
  expect(text.match(/\/Type\s*\/Page\b/g)).toHaveLength(4);
});

test('a weight that was hung on the bench, or none, is refused with its remedy', async () => {
  await fill(page, weight, '60 g');
  await page.getByText(/60 g was hung on the bench already/).waitFor();
  await fill(page, weight, '');
  await page.getByText(/Which weight/).waitFor();
  await fill(page, weight, 'sixty');
  expect(await page.getByRole('table', { name: /on the tip/ }).count()).toBe(0);
});

test('what was seen is judged, kept through a reload, and a miss is said openly', async () => {
  await fill(page, weight, '30 g');
  const table = page.getByRole('table', { name: /30 g on the tip/ });
  await table.waitFor();
  const rows = table.getByRole('row');
  expect(await rows.count()).toBe(5);
  const cell = async (row: number, column: number) => {
    const shown = await rows.nth(row).getByRole('cell').nth(column).textContent();
    const [, whole, fraction = ''] = /^(\d+)(?:\s+(\d+\/(?:16|8|4|2)))?/.exec(shown ?? '') ?? [];
    return `${whole} ${fraction} in`;
  };
  const out = await cell(1, 0);
  const up = await cell(1, 1);
  await fields(1, 0).fill(out);
  await fields(1, 0).press('Enter');
  await fields(1, 1).fill(up);
  await fields(1, 1).press('Enter');
  await page.getByText(/^The one place seen was where it was predicted\. /).waitFor();
  await fields(2, 0).fill('10 in');
  await fields(2, 0).press('Enter');
  await fields(2, 1).fill('10 in');
  await fields(2, 1).press('Enter');
  await page.getByText(/The prediction was wrong: 1 of 2 places/).waitFor();
  await page.getByText(/^1 of 2 places were seen .* on this rod,/).waitFor();
  await page.getByText('every change is on the disk').waitFor();
  await page.reload();
  await page.getByText(/^1 of 2 places were seen .* on this rod,/).waitFor();
  function fields(row: number, column: number) {
    return rows.nth(row).getByRole('textbox').nth(column);
  }
});

test('the proof sheet prints', async () => {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Proof sheet as PDF' }).click();
  expect((await download).suggestedFilename()).toMatch(/-proof-/);
});

test('axe finds nothing on the load test', async () => {
  await expectWell(page, everyLook);
  expect(bench.complaints).toEqual([]);
});

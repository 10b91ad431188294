import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Change } from '../../src/record/operation.ts';
import { twoPieceChanges } from './invented-build.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild } from './open-step.ts';

let bench: Bench;
let page: Page;
let id: string;
beforeAll(async () => {
  bench = await openBench();
  id = await addBuild(bench, [...twoPieceChanges(), ...secondSetup(), balancedAtItsEnd]);
  page = await bench.openPage(`/builds/${id}/layout`, {
    viewport: { width: 1440, height: 900 },
    folded: true,
  });
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

const limits = () => page.locator('details.fold', { has: page.getByRole('heading', { name: 'Limits' }) });
const next = () => page.getByRole('note', { name: 'What to do next' });

test('what is seldom wanted is folded, its heading in sight, and opens with one press', async () => {
  await limits().locator('summary').waitFor();
  expect(await limits().getByRole('textbox').count()).toBe(0);
  await limits().locator('summary').click();
  await expect.poll(() => limits().getByRole('textbox').count()).toBeGreaterThan(2);
});

test('readings show one set-up; another is one press away', async () => {
  await page.goto(`${bench.server.address}/builds/${id}/blank/readings`);
  const rail = page.getByRole('navigation', { name: 'Set-ups' });
  const tab = (name: string) => rail.getByRole('button', { name: new RegExp(name) });
  await page.getByRole('heading', { name: /Butt section alone/ }).waitFor();
  expect(await tab('Butt section alone').getAttribute('aria-current')).toBe('step');
  expect(await page.getByRole('heading', { name: /Whole blank level/ }).count()).toBe(0);
  await tab('Whole blank level').click();
  await page.getByRole('heading', { name: /Whole blank level/ }).waitFor();
  expect(await page.getByRole('heading', { name: /Butt section alone/ }).count()).toBe(0);
});

test('"Go there" opens what keeps the field out of sight', async () => {
  await next().getByRole('button', { name: 'Go there' }).click();
  await page.getByRole('heading', { name: /Butt section alone/ }).waitFor();
  await expect
    .poll(() =>
      page.evaluate(() => document.activeElement?.closest('[data-path]')?.getAttribute('data-path')),
    )
    .toBe('readings/u1/drop');
});

test('what looks odd names its section, and leads to a field on another screen', async () => {
  await page.getByText('One thing looks odd').click();
  const odd = page.locator('.look-again');
  await odd.getByText(/^tip: Measure this balance point again/).waitFor();
  await odd.getByRole('button', { name: 'Go there' }).click();
  await expect
    .poll(() => page.evaluate(() => (document.activeElement as HTMLElement).dataset.path))
    .toBe('sections/top/balanceFromOwnTip');
  await page.goBack();
});

test('a caution folds to one line once it was read, and opens again', async () => {
  const caution = page.locator('.caution', { hasText: 'Eyes covered' });
  const warning = caution.getByText('A blank can break below any level named here', { exact: false });
  await caution.getByRole('button', { name: 'I have read it' }).click();
  await warning.waitFor({ state: 'hidden' });
  await page.reload();
  await caution.getByText('✓ read').waitFor();
  expect(await warning.isVisible()).toBe(false);
  await caution.locator('summary').first().click();
  await warning.waitFor();
});

function secondSetup(): Change[] {
  const fields: [string, string, Record<string, Change['value']>][] = [
    ['setups', 's2', { order: 1, name: 'Butt section alone', kind: 'clamp', clampFromTip: inches(84) }],
    ['tests', 'u', { order: 0, setup: 's2', hung: { si: 0.03, text: '30 g' }, hungFromTip: inches(0) }],
    ['readings', 'u1', { order: 0, test: 'u', fromTip: inches(0) }],
  ];
  return fields.flatMap(([collection, row, values]) =>
    Object.entries(values).map(([field, value]) => ({ path: [collection, row, field], value })),
  );
}

/** No section that tapers balances there. */
const balancedAtItsEnd: Change = {
  path: ['sections', 'top', 'balanceFromOwnTip'],
  value: { si: 0.1, text: '100 mm' },
};

function inches(value: number) {
  return { si: value * 0.0254, text: `${value} in` };
}

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Change } from '../../src/record/operation.ts';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
const named: Change[] = [{ path: ['blank', '-', 'series'], value: 'Invented 46' }];
beforeAll(async () => {
  bench = await openBench();
  const measured = [...twoPieceChanges(), ...named, ...readAgain(4)];
  for (let count = 0; count < 3; count++) await addBuild(bench, measured);
  const bare = twoPieceChanges().filter(({ path }) => !['setups', 'tests', 'readings'].includes(path[0]));
  page = await openStep(bench, [...bare, ...named], 'blank');
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

/** The loaded readings of the invented bench taken this many times more: 21 in all. */
function readAgain(times: number): Change[] {
  const loaded = twoPieceChanges().filter(({ path }) => path[1] === 't2' || /^q\d$/.test(path[1]));
  return Array.from({ length: times }, (_, k) =>
    loaded.map(({ path: [collection, id, field], value }) => ({
      path: [collection, `${id}-${k}`, field] as const,
      value: field === 'test' ? `t2-${k}` : value,
    })),
  ).flat();
}

test('where three blanks of its series were measured in full, half the protocol is offered and says why', async () => {
  await page.getByText('Tick “Read this blank together with the others” below').waitFor();
  await page.getByText('Read this blank together with the others of its series').click();
  const offer = page.getByText(/13 readings instead of 25: .* from 3 blanks of “Invented 46”/);
  await offer.waitFor();
  await expectWell(page);
  await page.getByRole('button', { name: 'Lay out the half protocol with its series' }).click();
  await page.getByText('0 of 13 taken').waitFor();
  expect(bench.complaints).toEqual([]);
});

import type { Page } from 'playwright-core';
import type { Change } from '../../src/record/operation.ts';
import type { Bench } from './open-bench.ts';

/** A build of these changes on the server, opened at one of its steps. */
export async function openStep(bench: Bench, changes: readonly Change[], step: string): Promise<Page> {
  const page = await bench.openPage('/', { viewport: { width: 1440, height: 900 }, acceptDownloads: true });
  page.setDefaultTimeout(8000);
  const id = await page.evaluate(async (sent) => {
    const answer = await fetch('/api/documents', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ kind: 'build', changes: sent }),
    });
    return ((await answer.json()) as { id: string }).id;
  }, changes);
  await page.goto(`${bench.server.address}/builds/${id}/${step}`);
  return page;
}

/** Types into a field as a person does, and keeps it with Enter. */
export async function fill(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

/** Names of the tables that are wider than what is seen of them. */
export function cutTables(page: Page): Promise<(string | null)[]> {
  return page
    .locator('.table-frame')
    .evaluateAll((frames) =>
      frames
        .filter((frame) => frame.scrollWidth > frame.clientWidth + 1)
        .map((frame) => frame.getAttribute('aria-label')),
    );
}

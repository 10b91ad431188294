import type { BrowserContextOptions, Page } from 'playwright-core';
import type { ImportAnswer } from '../../src/record/api.ts';
import type { Change } from '../../src/record/operation.ts';
import type { Bench } from './open-bench.ts';

/** A build of these changes on the server; the id it was given. */
export async function addBuild({ server }: Bench, changes: readonly Change[]): Promise<string> {
  const added = await fetch(`${server.address}/api/documents`, {
    method: 'POST',
    headers: { origin: server.address, 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build', changes }),
  });
  if (!added.ok) throw new Error(`the build was refused: ${await added.text()}`);
  return ((await added.json()) as { id: string }).id;
}

/** A build file taken in; the id it was given. */
export async function addFile({ server }: Bench, text: string): Promise<string> {
  const added = await fetch(`${server.address}/api/files`, {
    method: 'POST',
    headers: { origin: server.address, 'content-type': 'application/json' },
    body: text,
  });
  if (!added.ok) throw new Error(`the file was refused: ${await added.text()}`);
  return ((await added.json()) as ImportAnswer).document.id;
}

/** A build of these changes on the server, opened at one of its steps. */
export async function openStep(
  bench: Bench,
  changes: readonly Change[],
  step: string,
  options: BrowserContextOptions = {},
): Promise<Page> {
  const id = await addBuild(bench, changes);
  const page = await bench.openPage(`/builds/${id}/${step}`, {
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
    ...options,
  });
  page.setDefaultTimeout(30_000);
  return page;
}

/** Goes to another step as a builder does: by the rail, the page and its workers staying. */
export async function goToStep(page: Page, name: string): Promise<void> {
  const rail = page.getByRole('navigation', { name: 'Steps of the build' });
  await rail.getByRole('link', { name: new RegExp(`^${name}`) }).click();
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

import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DocumentAnswer, DocumentSummary } from '../../src/record/api.ts';
import { chromeArguments, chromeFile } from './one-browser.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill } from './open-step.ts';

let bench: Bench;
let profile = '';
beforeAll(async () => {
  bench = await openBench();
  profile = mkdtempSync(join(tmpdir(), 'fairbend-profile-'));
});
afterAll(async () => {
  killBrowser();
  await bench?.close();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
});

/** A browser whose profile outlives it. */
function startBrowser(): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, {
    executablePath: chromeFile(),
    args: chromeArguments(),
    viewport: { width: 1440, height: 900 },
  });
}

/** SIGKILL to every process that runs on the profile, found by its command line. */
function killBrowser(): number {
  const pids = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  const own = pids.filter((pid) => commandOf(pid).includes(profile));
  for (const pid of own) {
    try {
      process.kill(Number(pid), 'SIGKILL');
    } catch {
      // It ended with its parent.
    }
  }
  return own.length;
}

function commandOf(pid: string): string {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8');
  } catch {
    return '';
  }
}

async function newBuild(): Promise<string> {
  const response = await fetch(`${bench.server.address}/api/documents`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build' }),
  });
  return ((await response.json()) as DocumentSummary).id;
}

async function openBlank(context: BrowserContext, id: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${bench.server.address}/builds/${id}/blank`);
  await page.getByRole('textbox', { name: 'Customer', exact: true }).waitFor();
  return page;
}

async function stored(id: string, path: string): Promise<unknown> {
  const response = await fetch(`${bench.server.address}/api/documents/${id}`);
  const { cells } = (await response.json()) as DocumentAnswer;
  return Object.fromEntries(cells)[path]?.value;
}

const onDisk = (page: Page) => page.getByText('every change is on the disk').waitFor();
const kept = (page: Page) => page.getByText('kept in this browser').waitFor();

test.runIf(process.platform === 'linux')(
  'a browser killed right after the screen said so has lost nothing, four times over',
  async () => {
    const id = await newBuild();
    for (let round = 0; round < 4; round++) {
      const page = await openBlank(await startBrowser(), id);
      await onDisk(page);
      await fill(page, 'Customer', `Angler ${round}`);
      await page.getByText(/saving 1 change|not on the disk yet/).waitFor({ state: 'detached' });
      await onDisk(page);
      expect(killBrowser()).toBeGreaterThan(0);
      expect(await stored(id, 'about/-/customer')).toBe(`Angler ${round}`);
    }
  },
);

test.runIf(process.platform === 'linux')(
  'killed while the server was away, it still has what it said it keeps, and sends it when it comes back',
  async () => {
    const id = await newBuild();
    const page = await openBlank(await startBrowser(), id);
    await onDisk(page);
    await bench.stopServer();
    await fill(page, 'Customer', 'Typed before the end');
    await kept(page);
    killBrowser();
    await bench.restart();
    expect(await stored(id, 'about/-/customer')).toBeUndefined();
    const context = await startBrowser();
    const shelf = await context.newPage();
    await shelf.goto(bench.server.address);
    await expect.poll(() => stored(id, 'about/-/customer'), { timeout: 20_000 }).toBe('Typed before the end');
    await context.close();
  },
);

test('a full disk under the server: the page says so, keeps the change, and saves it once there is room', async () => {
  const id = await newBuild();
  const page = await bench.openPage(`/builds/${id}/blank`);
  await page.getByRole('textbox', { name: 'Customer', exact: true }).waitFor();
  const message =
    'The disk under the database of this record is full; the last change was not saved. Make room on it, then try again';
  const operations = `**/api/documents/${id}/operations`;
  await page.route(operations, (route) =>
    route.request().method() === 'POST'
      ? route.fulfill({ status: 507, json: { message, findings: [] } })
      : route.continue(),
  );
  await fill(page, 'Customer', 'On a full disk');
  await page.getByText('The disk under the database of this record is full').waitFor();
  await kept(page);
  await page.unroute(operations);
  await page.getByRole('button', { name: 'Try now' }).click();
  await onDisk(page);
  expect(await stored(id, 'about/-/customer')).toBe('On a full disk');
});

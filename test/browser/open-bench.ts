import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { type RunningServer, type ServeOptions, serve } from '../../src/server/serve.ts';
import { oneBrowser } from './one-browser.ts';

/** A server on a data folder of its own, and browser profiles that nobody else uses. */
export interface Bench {
  server: RunningServer;
  /** A page in a browser profile of its own: another device, as far as Fairbend can tell. */
  openPage(path?: string, options?: PageOptions): Promise<Page>;
  /** What must not happen, over all pages so far: console errors, exceptions, requests to other hosts. */
  complaints: string[];
  /** Ends the server, as a cut cable would for the page; `restart` brings it back on the same port. */
  stopServer(): Promise<void>;
  restart(): Promise<void>;
  close(): Promise<void>;
}

export interface PageOptions extends BrowserContextOptions {
  /** As a new device shows it, most parts folded; else every part is open, as Settings offers. */
  folded?: boolean;
}

export async function openBench(options: Partial<ServeOptions> = {}): Promise<Bench> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'fairbend-browser-'));
  const complaints: string[] = [];
  const contexts: BrowserContext[] = [];
  const server = await serve({ dataFolder, port: 0, ...options });
  const browser = await oneBrowser();
  const bench: Bench = {
    server,
    complaints,
    async openPage(path = '/', { folded, ...options } = {}) {
      // Each page is another device, which would fetch the whole page into its store: only where a test is about that.
      const context = await browser.newContext({ serviceWorkers: 'block', ...options });
      contexts.push(context);
      if (!folded) await context.addInitScript(() => localStorage.setItem('fairbend-open-parts', 'on'));
      const page = await context.newPage();
      listen(page, bench.server.address, complaints);
      await page.goto(bench.server.address + path);
      return page;
    },
    stopServer: () => bench.server.close(),
    async restart() {
      bench.server = await serve({ dataFolder, port: Number(new URL(bench.server.address).port) });
    },
    async close() {
      for (const context of contexts) await context.close();
      await bench.server.close();
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
  return bench;
}

function listen(page: Page, address: string, complaints: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`exception: ${error.message}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(blob|data):/.test(url)) complaints.push(`request to ${url}`);
  });
}

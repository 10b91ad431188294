import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/**
 * The Chromium of this test process: started once, by the first file that asks; it ends with the process. What one
 * file must not see of another lies in profiles (contexts) of their own.
 */
export async function oneBrowser(): Promise<Browser> {
  const running = await started;
  if (running?.isConnected()) return running;
  started = chromium.launch({ executablePath: chromeFile(), args: chromeArguments() });
  return started;
}
let started: Promise<Browser> | undefined;

export function chromeFile(): string {
  const known = [
    process.env.CHROME,
    '/usr/bin/chromium-headless-shell',
    '/usr/bin/chromium',
    '/usr/bin/google-chrome',
  ];
  const found = known.find((file) => file && existsSync(file));
  if (!found) throw new Error('No Chromium. Run "npm test", which finds one, or set CHROME to its file');
  return found;
}

export function chromeArguments(): string[] {
  const quiet = [
    '--headless',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ];
  // Chromium refuses its sandbox to root, which is who runs a container.
  return process.getuid?.() === 0 ? [...quiet, '--no-sandbox'] : quiet;
}

import { readFileSync } from 'node:fs';
import { withLock } from './lock.mjs';
import { npm } from './npm.mjs';
import { inRoot, say } from './root.mjs';

/** Makes node_modules fit the lock file; nothing runs when it does. No package needs its install script. */
export async function ensureInstalled() {
  if (matchesLock()) return;
  await withLock(() => {
    if (!matchesLock()) install();
  });
}

/** Whether what npm noted as installed is what the lock file asks for (someone may have run `npm ci`). */
function matchesLock() {
  try {
    const wanted = JSON.parse(readFileSync(inRoot('package-lock.json'), 'utf8')).packages;
    const present = JSON.parse(readFileSync(inRoot('node_modules', '.package-lock.json'), 'utf8')).packages;
    return Object.entries(wanted).every(
      ([path, { version, optional }]) =>
        path === '' || present[path]?.version === version || (optional && !present[path]),
    );
  } catch {
    return false;
  }
}

function install() {
  say('Installing what Fairbend needs (once; about a minute) …');
  // `npm test` asks for the audit on its own.
  const flags = [
    '--ignore-scripts',
    '--include=dev',
    '--include=optional',
    '--prefer-offline',
    '--no-audit',
    '--no-fund',
    '--loglevel=error',
  ];
  if (npm('ci', ...flags) || npm('install', ...flags)) return;
  throw new Error(
    'npm could not install the packages; its message stands above. Check the connection and try again.',
  );
}

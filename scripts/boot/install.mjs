import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { withLock } from './lock.mjs';
import { npm } from './npm.mjs';
import { inRoot, root, say } from './root.mjs';

/** In node_modules, so that it goes with them. */
const stampFile = inRoot('node_modules', '.fairbend-stamp');

/**
 * Makes node_modules fit the lock file, and SQLite fit this Node.
 * Nothing runs when they do. Install scripts are not run: only better-sqlite3 needs one, and only where Node
 * has no SQLite of its own.
 */
export async function ensureInstalled({ sqlite = true } = {}) {
  const key = installKey();
  const fits = () => readStamp().key === key && (readStamp().sqlite || !sqlite);
  if (fits()) return;
  await withLock(async () => {
    if (fits()) return;
    if (!matchesLock()) install();
    const works = sqliteWorks() || (sqlite && rebuildSqlite());
    writeFileSync(stampFile, JSON.stringify({ key, sqlite: works }));
  });
}

/** Lock file, Node's binary interface and platform: another of any of these needs another install. */
function installKey() {
  const { platform, arch, versions } = process;
  const lock = readFileSync(inRoot('package-lock.json'));
  return createHash('sha256').update(lock).update(`${versions.modules} ${platform} ${arch}`).digest('hex');
}

function readStamp() {
  try {
    return JSON.parse(readFileSync(stampFile, 'utf8'));
  } catch {
    return {};
  }
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
  const flags = ['--ignore-scripts', '--include=dev', '--include=optional'];
  if (npm('ci', ...flags) || npm('install', ...flags)) return;
  throw new Error(
    'npm could not install the packages; its message stands above. Check the connection and try again.',
  );
}

/** In a process of its own: a driver loaded here could not be replaced on Windows. */
function sqliteWorks() {
  if (process.getBuiltinModule?.('node:sqlite')) return true;
  const probe = "new (require('better-sqlite3'))(':memory:').close()";
  return spawnSync(process.execPath, ['-e', probe], { cwd: root, stdio: 'ignore' }).status === 0;
}

function rebuildSqlite() {
  say(
    `Node ${process.versions.node} has no SQLite of its own: building better-sqlite3 (once; a minute or two) …`,
  );
  if (npm('rebuild', 'better-sqlite3', '--ignore-scripts=false') && sqliteWorks()) return true;
  throw new Error(
    'better-sqlite3 could not be built. Either use Node 24, which has SQLite built in, or install python3, make and a C++ compiler (Debian: apt-get install python3 make g++) and try again.',
  );
}

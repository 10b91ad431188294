import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withLock } from './lock.mjs';
import { inRoot, root, say } from './root.mjs';

/** What `npm run fonts` added goes into the page. */
const addedFonts = ['jp', 'kr', 'sc', 'tc'].map((name) =>
  join('packaging', 'fonts', name, 'node_modules', '.package-lock.json'),
);

const inBoth = ['engine', 'record', 'words', 'sheets', 'image', 'paper'].map((part) => `src/${part}`);

/** Everything but the page. Types are checked by `npm test`: whoever only starts need not wait for it. */
const programs = {
  name: 'compiled',
  says: 'Building Fairbend …',
  sources: [...inBoth, 'src/door', 'src/server', 'src/cli'],
  build: () =>
    run(inRoot('node_modules', 'typescript', 'bin', 'tsc'), '-b', '--noCheck', 'src/cli', 'src/server'),
};

/** The page in dist/web; the old one stays until the new one is whole. */
const page = {
  name: 'page',
  says: 'Building the page …',
  sources: [...inBoth, 'src/web', 'vite.config.ts', 'docs/manual', 'scripts/manual', ...addedFonts],
  build: async () => {
    const next = inRoot('dist', 'web-next');
    await run(
      inRoot('node_modules', 'vite', 'bin', 'vite.js'),
      'build',
      '--outDir',
      next,
      '--logLevel',
      'warn',
    );
    const [current, old] = [inRoot('dist', 'web'), inRoot('dist', 'web-old')];
    rmSync(old, { recursive: true, force: true });
    if (existsSync(current)) renameSync(current, old);
    renameSync(next, current);
    rmSync(old, { recursive: true, force: true });
  },
};

export const ensureCompiled = () => ensure([programs]);
export const ensurePageBuilt = () => ensure([page]);
/** Both, side by side. */
export const ensureBuilt = () => ensure([programs, page]);

/** Builds those whose stamp does not say that they were built from just these sources. */
async function ensure(parts) {
  const stale = () => parts.filter(({ name, sources }) => stampOf(name) !== hashOf(sources));
  if (stale().length === 0) return;
  await withLock(async () => {
    const built = await Promise.allSettled(stale().map(buildOne));
    for (const { reason } of built) if (reason) throw reason;
  });
}

async function buildOne({ name, says, sources, build }) {
  say(says);
  const built = hashOf(sources);
  mkdirSync(inRoot('dist'), { recursive: true });
  rmSync(stampFile(name), { force: true });
  await build();
  writeFileSync(stampFile(name), built);
}

const stampFile = (name) => inRoot('dist', `.${name}-stamp`);
const stampOf = (name) => existsSync(stampFile(name)) && readFileSync(stampFile(name), 'utf8');

/** Of names and contents of all sources that reach the result; tests do not. */
function hashOf(sources) {
  const hash = createHash('sha256');
  for (const file of [...sources.flatMap(filesUnder), 'tsconfig.base.json', 'package-lock.json']) {
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(inRoot(file)))
      .update('\0');
  }
  return hash.digest('hex');
}

function filesUnder(path) {
  if (!existsSync(inRoot(path))) return [];
  if (/\.\w+$/.test(path)) return [path];
  return readdirSync(inRoot(path), { withFileTypes: true })
    .map((entry) => ({ entry, at: join(path, entry.name) }))
    .filter(({ entry }) => !/\.test\.tsx?$/.test(entry.name))
    .flatMap(({ entry, at }) => (entry.isDirectory() ? filesUnder(at) : [at]))
    .sort();
}

function run(script, ...parameters) {
  const stdio = ['ignore', process.stderr, process.stderr];
  const child = spawn(process.execPath, [script, ...parameters], { cwd: root, stdio });
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (status) =>
      status === 0 ? resolve() : reject(new Error('The build failed; its message stands above.')),
    );
  });
}

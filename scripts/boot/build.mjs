import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withLock } from './lock.mjs';
import { inRoot, root, say } from './root.mjs';

/** Compiles the programs (everything but the page) when a source is newer than what was compiled. */
export function ensureCompiled() {
  return ensure(
    'compiled',
    [
      'src/engine',
      'src/record',
      'src/words',
      'src/sheets',
      'src/image',
      'src/paper',
      'src/door',
      'src/server',
      'src/cli',
    ],
    () => run(inRoot('node_modules', 'typescript', 'bin', 'tsc'), '-b', 'src/cli', 'src/server'),
  );
}

/** What `npm run fonts` added goes into the page. */
const addedFonts = ['jp', 'kr', 'sc', 'tc'].map((name) =>
  join('packaging', 'fonts', name, 'node_modules', '.package-lock.json'),
);

/** Builds the page into dist/web; the old one stays until the new one is whole. */
export function ensurePageBuilt() {
  return ensure(
    'page',
    [
      'src/engine',
      'src/record',
      'src/words',
      'src/sheets',
      'src/image',
      'src/paper',
      'src/web',
      'vite.config.ts',
      'docs/manual',
      'scripts/manual',
      ...addedFonts,
    ],
    () => {
      const next = inRoot('dist', 'web-next');
      run(inRoot('node_modules', 'vite', 'bin', 'vite.js'), 'build', '--outDir', next, '--logLevel', 'warn');
      const [page, old] = [inRoot('dist', 'web'), inRoot('dist', 'web-old')];
      rmSync(old, { recursive: true, force: true });
      if (existsSync(page)) renameSync(page, old);
      renameSync(next, page);
      rmSync(old, { recursive: true, force: true });
    },
  );
}

/** Runs `build` unless its stamp says that it was built from just these sources. */
async function ensure(name, sources, build) {
  const stamp = inRoot('dist', `.${name}-stamp`);
  const fresh = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === hashOf(sources);
  if (fresh()) return;
  await withLock(async () => {
    if (fresh()) return;
    say(name === 'page' ? 'Building the page …' : 'Building Fairbend …');
    const built = hashOf(sources);
    mkdirSync(inRoot('dist'), { recursive: true });
    rmSync(stamp, { force: true });
    build();
    writeFileSync(stamp, built);
  });
}

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
  const { status } = spawnSync(process.execPath, [script, ...parameters], {
    cwd: root,
    stdio: ['ignore', process.stderr, process.stderr],
  });
  if (status !== 0) throw new Error('The build failed; its message stands above.');
}

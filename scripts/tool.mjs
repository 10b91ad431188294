import './boot/check-node.mjs';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { ensureInstalled } from './boot/install.mjs';
import { cleanEnvironment } from './boot/npm.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, root } from './boot/root.mjs';

const help = `npm run --silent tool -- NAME …
Runs a tool of the packages on the Node that Fairbend runs on: vitest, tsc, biome, vite.
  npm run --silent tool -- vitest run src/paper/sheet-pdf.test.ts`;

await orExplain(async () => {
  const [name, ...parameters] = process.argv.slice(2);
  if (!name || name === '--help') return console.log(help);
  await ensureInstalled();
  const script = scriptOf(name);
  const ran = spawnSync(process.execPath, [script, ...parameters], {
    cwd: root,
    stdio: 'inherit',
    env: cleanEnvironment(process.env),
  });
  process.exitCode = ran.status ?? 1;
});

/** Of the packages that the manifest names; npm's own links in .bin are shell scripts on Windows. */
function scriptOf(name) {
  const { dependencies, devDependencies } = JSON.parse(readFileSync(inRoot('package.json'), 'utf8'));
  for (const owner of Object.keys({ ...dependencies, ...devDependencies })) {
    const { bin = {} } = JSON.parse(readFileSync(inRoot('node_modules', owner, 'package.json'), 'utf8'));
    const named = typeof bin === 'string' ? { [owner.replace(/^.*\//, '')]: bin } : bin;
    if (named[name]) return inRoot('node_modules', owner, named[name]);
  }
  throw new Error(`No package has a tool "${name}". There are vitest, tsc, biome and vite, among others.`);
}

import './boot/check-node.mjs';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { ensureCompiled, ensurePageBuilt } from './boot/build.mjs';
import { ensureInstalled } from './boot/install.mjs';
import { npm } from './boot/npm.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, root, say } from './boot/root.mjs';

/** Both from the npm registry: Node itself, and the tool Node's manual names for putting a program into it. */
const nodeVersion = '24.21.0';
const postjectVersion = '1.0.0-alpha.6';
/** The mark Node's manual (Single executable applications) gives. */
const fuse = 'NODE_SEA_FUSE_fce680ab2cc467b6e072b8b5df1996b2';

const out = inRoot('dist', 'one-file');
const tools = inRoot('.stamp', 'one-file');

/** `npm run one-file`: Node, the programs and the page in one program for this kind of machine (Linux). */
await orExplain(async () => {
  if (process.platform !== 'linux') throw new Error('The one-file program is made on Linux, for Linux');
  await ensureInstalled();
  await ensureCompiled();
  await ensurePageBuilt();
  const node = fetchTools();
  rmSync(out, { recursive: true, force: true });
  const app = join(out, 'app');
  await bundle(join(app, 'dist', 'server'));
  const files = [
    ...filesUnder(app).map((file) => ({ path: relative(app, file), file })),
    ...filesUnder(inRoot('dist', 'web')).map((file) => ({ path: relative(root, file), file })),
    { path: join('examples', 'demo-build.json'), file: inRoot('examples', 'demo-build.json') },
    { path: 'package.json', file: inRoot('package.json') },
  ].map(({ path, file }) => ({ path: path.split(sep).join('/'), file }));
  const program = pack(node, files);
  say(`${program}: ${Math.round(statSync(program).size / 1024 ** 2)} MB`);
});

function fetchTools() {
  const name = `node-linux-${process.arch}`;
  const wanted = [`${name}@${nodeVersion}`, `postject@${postjectVersion}`];
  const flags = ['--no-save', '--no-package-lock', '--ignore-scripts', '--no-audit'];
  if (!npm('install', '--prefix', tools, ...flags, ...wanted))
    throw new Error('The registry did not give Node and postject; its message stands above');
  return join(tools, 'node_modules', name, 'bin', 'node');
}

/** The server and all it imports, without node_modules; SQLite is Node's own there. */
async function bundle(folder) {
  const { build } = await import('vite');
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true, external: ['pg-native'] },
    build: {
      ssr: true,
      outDir: folder,
      target: 'node22',
      minify: false,
      rollupOptions: {
        input: {
          'run-server': inRoot('dist', 'server', 'run-server.js'),
          'job-thread': inRoot('dist', 'server', 'jobs', 'job-thread.js'),
        },
        output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  });
}

function pack(node, files) {
  const index = files.map(({ path, file }) => ({
    path,
    sha256: createHash('sha256').update(readFileSync(file)).digest('hex'),
  }));
  const indexFile = join(out, 'index.json');
  writeFileSync(indexFile, JSON.stringify(index));
  const config = join(out, 'sea-config.json');
  const blob = join(out, 'fairbend.blob');
  const assets = Object.fromEntries([
    ['index.json', indexFile],
    ...files.map(({ path, file }) => [path, file]),
  ]);
  const main = inRoot('packaging', 'one-file-start.cjs');
  const settings = { main, output: blob, assets, disableExperimentalSEAWarning: true };
  writeFileSync(config, JSON.stringify(settings));
  execFileSync(node, ['--experimental-sea-config', config], { stdio: ['ignore', 'ignore', 'inherit'] });
  const program = join(out, 'fairbend');
  mkdirSync(out, { recursive: true });
  copyFileSync(node, program);
  const postject = join(tools, 'node_modules', 'postject', 'dist', 'cli.js');
  const parameters = [postject, program, 'NODE_SEA_BLOB', blob, '--sentinel-fuse', fuse];
  execFileSync(node, parameters, { stdio: ['ignore', 'ignore', 'inherit'] });
  return program;
}

function filesUnder(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

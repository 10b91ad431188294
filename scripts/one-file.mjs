import './boot/check-node.mjs';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import { parseArgs } from 'node:util';
import { ensureBuilt } from './boot/build.mjs';
import { fetchedNode, folder as nodeFolder, nodeProgram } from './boot/fetched-node.mjs';
import { ensureInstalled } from './boot/install.mjs';
import { npmIn } from './boot/npm.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, root, say } from './boot/root.mjs';

const out = inRoot('dist', 'one-file');

/** The mark in Node's program that says where a program was put into it (its manual, Single executable applications). */
const fuse = 'NODE_SEA_FUSE_fce680ab2cc467b6e072b8b5df1996b2';

/** Kinds of computers; a Mac refuses a changed program that nobody signed anew, and signing needs a Mac. */
const kinds = {
  windows: { platform: 'win32', arch: 'x64', file: 'fairbend-windows-x64.exe' },
  linux: { platform: 'linux', arch: 'x64', file: 'fairbend-linux-x64' },
  'linux-arm': { platform: 'linux', arch: 'arm64', file: 'fairbend-linux-arm64' },
};

const help = `npm run one-file -- [KIND …]
Makes programs to double-click in dist/one-file, with Node, Fairbend and its page inside, and lists them with sizes
and checksums. KIND is one or more of ${Object.keys(kinds).join(', ')}; all of them otherwise.`;

await orExplain(async () => {
  const { positionals, values } = parseArgs({
    allowPositionals: true,
    options: { help: { type: 'boolean' } },
  });
  if (values.help) return console.log(help);
  const wanted = positionals.length > 0 ? positionals : Object.keys(kinds);
  const unknown = wanted.find((kind) => !kinds[kind]);
  if (unknown) throw new Error(`"${unknown}" is none of ${Object.keys(kinds).join(', ')}.`);
  await ensureInstalled();
  await ensureBuilt();
  const builder = await fetchedNode('The programs are put together by the Node that goes into them.');
  rmSync(out, { recursive: true, force: true });
  const blob = makeBlob(builder, await gatherAssets());
  const programs = wanted.map((kind) => pack(kinds[kind], blob));
  const lines = programs.map((program) => `${sha256Of(program)}  ${basename(program)}\n`);
  writeFileSync(join(out, 'SHA256SUMS'), lines.join(''));
  for (const program of programs)
    console.log(`${basename(program)}  ${readFileSync(program).length} bytes  sha256 ${sha256Of(program)}`);
});

const demoFiles = () => readdirSync(inRoot('examples')).filter((name) => /^demo-.*\.json$/.test(name));

/** What the program carries, by its path in the package, and a list of it. */
async function gatherAssets() {
  const app = join(out, 'work', 'app');
  await bundle(join(app, 'dist', 'server'));
  const files = [
    ...filesUnder(app).map((file) => [relative(app, file), file]),
    ...filesUnder(inRoot('dist', 'web')).map((file) => [relative(root, file), file]),
    ...demoFiles().map((name) => [join('examples', name), inRoot('examples', name)]),
    ['package.json', inRoot('package.json')],
  ].map(([path, file]) => [path.split(sep).join('/'), file]);
  const index = join(out, 'work', 'index.json');
  writeFileSync(index, JSON.stringify(files.map(([path, file]) => ({ path, sha256: sha256Of(file) }))));
  return Object.fromEntries([['index.json', index], ...files]);
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
        input: Object.fromEntries(programsOfServer().map((file) => [basename(file, '.js'), file])),
        output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  });
}

/** Where the server begins, and each of its threads. */
function programsOfServer() {
  const server = inRoot('dist', 'server');
  return [join(server, 'run-server.js'), ...filesUnder(server).filter((file) => /-thread\.js$/.test(file))];
}

/** All of it as Node reads it; made and read by one version of Node, it is the same for every kind of computer. */
function makeBlob(builder, assets) {
  const [config, output] = [join(out, 'work', 'config.json'), join(out, 'work', 'fairbend.blob')];
  const main = inRoot('packaging', 'one-file-start.cjs');
  writeFileSync(config, JSON.stringify({ main, output, assets, disableExperimentalSEAWarning: true }));
  execFileSync(builder, ['--experimental-sea-config', config], { stdio: ['ignore', 'ignore', 'inherit'] });
  return output;
}

function pack({ platform, arch, file }, blob) {
  const program = join(out, file);
  cpSync(nodeFor(platform, arch), program);
  chmodSync(program, 0o755);
  const postject = inRoot('node_modules', 'postject', 'dist', 'cli.js');
  const parameters = [postject, program, 'NODE_SEA_BLOB', blob, '--sentinel-fuse', fuse];
  // It warns of every section it does not know; where it fails, its words are in the error.
  execFileSync(process.execPath, parameters, { stdio: ['ignore', 'ignore', 'pipe'] });
  return program;
}

/** The pinned Node of another kind of computer, from the same lock file. */
function nodeFor(platform, arch) {
  const folder = inRoot('.stamp', 'one-file', `${platform}-${arch}`);
  const program = nodeProgram(platform, arch, folder);
  const lock = join(folder, 'package-lock.json');
  const wanted = readFileSync(join(nodeFolder, 'package-lock.json'));
  if (existsSync(program.file) && existsSync(lock) && readFileSync(lock).equals(wanted)) return program.file;
  say(`Fetching Node for ${platform} ${arch} …`);
  mkdirSync(folder, { recursive: true });
  for (const name of ['package.json', 'package-lock.json', '.npmrc'])
    cpSync(join(nodeFolder, name), join(folder, name));
  if (!npmIn(folder, 'ci', '--ignore-scripts', '--loglevel=error', `--os=${platform}`, `--cpu=${arch}`))
    throw new Error('npm did not give it; its message stands above. Check the connection and try again.');
  return program.file;
}

function sha256Of(file) {
  return createHash('sha256').update(readFileSync(file)).digest('hex');
}

function filesUnder(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

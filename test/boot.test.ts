import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { withLock } from '../scripts/boot/lock.mjs';
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

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeProgram } from '../src/cli/commands.ts';

const unit = readFileSync('packaging/fairbend.service', 'utf8');
const container = readFileSync('packaging/Containerfile', 'utf8');
const hasSystemd = spawnSync('systemd-analyze', ['--version']).status === 0;

/** The options a command line knows, of `serve`. */
const known = makeProgram(() => undefined)
  .commands.find((command) => command.name() === 'serve')!
  .options.map(({ long }) => long);

test.each([
  ['the unit', /serve (.*)$/m.exec(unit)![1].split(' ')],
  ['the container', JSON.parse(`[${/^CMD \[(.*)\]/m.exec(container)![1]}]`) as string[]],
])('%s starts the server with options it knows', (_, words) => {
  const options = words.filter((word) => word.startsWith('--'));
  expect(options).toContain('--share');
  expect(known).toEqual(expect.arrayContaining(options));
});

test('every thread of the server is a file that the one-file program takes along', () => {
  const files = readdirSync('src/server', { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .map((file) => readFileSync(join('src/server', file), 'utf8'));
  const threads = files.flatMap((text) => [...text.matchAll(/new URL\('([^']+)', import\.meta\.url\)/g)]);
  const names = threads.map(([, name]) => name).filter((name) => !name.endsWith('/'));
  expect(names.length).toBeGreaterThan(1);
  // They lie side by side there, and are known by their names.
  for (const name of names) expect(name).toMatch(/^\.\/[\w-]+-thread\.js$/);
});

test('the container runs as nobody of importance, keeps its data in a volume and asks after its health', () => {
  expect(container).toMatch(/^USER fairbend$/m);
  expect(container.indexOf('USER fairbend')).toBeLessThan(container.indexOf('ENTRYPOINT'));
  expect(container).toMatch(/^VOLUME \/data$/m);
  expect(container).toMatch(/^HEALTHCHECK /m);
});

test.skipIf(!hasSystemd)('systemd takes the unit and finds little exposed', () => {
  const folder = mkdtempSync(join(tmpdir(), 'fairbend-unit-'));
  const file = join(folder, 'fairbend.service');
  // The program itself need not be installed where the unit is looked at.
  writeFileSync(file, unit.replace('/usr/bin/node /opt/fairbend', `${process.execPath} /opt/fairbend`));
  const verified = spawnSync('systemd-analyze', ['verify', file], { encoding: 'utf8' });
  const said = verified.stderr.split('\n').filter((line) => line.includes('fairbend.service'));
  const { stdout } = spawnSync('systemd-analyze', ['security', '--offline=true', file], { encoding: 'utf8' });
  rmSync(folder, { recursive: true, force: true });
  expect(said).toEqual([]);
  // systemd's own scale: 0 is closed, 10 open.
  const [, exposure] = /Overall exposure level for fairbend\.service: (\d+\.\d+)/.exec(stdout)!;
  expect(Number(exposure)).toBeLessThan(2.5);
});

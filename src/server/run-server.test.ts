import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type RunOptions, runServer } from './run-server.ts';

let folder = '';
let said: string[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-run-'));
  said = [];
  const say = (...words: unknown[]) => void said.push(words.join(' '));
  vi.spyOn(console, 'log').mockImplementation(say);
  vi.spyOn(console, 'error').mockImplementation(say);
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

/** Runs until it has said something that fits, then presses Ctrl-C; answers the exit code. */
async function runAndInterrupt(options: RunOptions, until: RegExp): Promise<number> {
  const ended = runServer(options);
  await vi.waitFor(() => expect(said.join('\n')).toMatch(until), { timeout: 20_000 });
  process.emit('SIGINT');
  return ended;
}

test('says where it is and where the record lies, and ends with 0 on Ctrl-C', async () => {
  expect(await runAndInterrupt({ data: folder, port: '0' }, /Ctrl-C ends it/)).toBe(0);
  expect(said.join('\n')).toMatch(/http:\/\/127\.0\.0\.1:\d+/);
  expect(said.join('\n')).toContain(folder);
  expect(said.at(-1)).toMatch(/everything is saved/);
});

const askToEnd = () =>
  fetch(`${/http:\S+/.exec(said.join('\n'))![0]}/api/end`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });

test('ends at the word of its page where nothing else keeps it running, and there alone', async () => {
  const ended = runServer({ data: folder, port: '0', endable: true });
  await vi.waitFor(() => expect(said.join('\n')).toMatch(/or the page/), { timeout: 20_000 });
  expect((await askToEnd()).status).toBe(200);
  expect(await ended).toBe(0);
  said = [];
  const kept = runServer({ data: folder, port: '0' });
  await vi.waitFor(() => expect(said.join('\n')).toMatch(/Ctrl-C ends it/), { timeout: 20_000 });
  expect((await askToEnd()).status).toBe(403);
  process.emit('SIGINT');
  expect(await kept).toBe(0);
});

test.each(['80a', '-1', '70000', '8e1'])('port %s is refused before anything starts', async (port) => {
  expect(await runServer({ data: folder, port })).toBe(1);
  expect(said).toEqual([expect.stringMatching(/is no port. Give a whole number from 1 to 65535/)]);
});

test('a start that cannot be is one sentence and exit code 1', async () => {
  writeFileSync(join(folder, 'fairbend.sqlite'), 'no database '.repeat(200));
  expect(await runServer({ data: folder, port: '0' })).toBe(1);
  expect(said).toEqual([expect.stringMatching(/is damaged; nothing in it was changed/)]);
});

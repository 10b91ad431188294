import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { serve } from '../serve.ts';
import { Backups } from './backups.ts';
import { backupsToKeep, backupToDrop } from './rotation.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-kept-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string) => join(folder, name);
const at = new Date('2026-03-01T09:00:00Z');

async function makeRecord(): Promise<void> {
  const server = await serve({ dataFolder: file('data'), port: 0 });
  await server.close();
}

describe('the backups a server keeps', () => {
  test('are the newest 5, and the newest of 7 days, 8 weeks and 12 months', () => {
    const made = Array.from({ length: 800 }, (_, half) =>
      new Date(Date.UTC(2026, 10, 25, 9) - half * 12 * 3600e3).toISOString(),
    );
    const kept = [...backupsToKeep(made)].sort().reverse();
    expect(kept.slice(0, 5)).toEqual(made.slice(0, 5));
    const days = [...new Set(kept.map((instant) => instant.slice(0, 10)))];
    expect(days.slice(0, 7).map((day) => day.slice(8))).toEqual(['25', '24', '23', '22', '21', '20', '19']);
    expect(new Set(kept.map((instant) => instant.slice(0, 7))).size).toBe(12);
    expect(kept.length).toBeLessThanOrEqual(5 + 7 + 8 + 12);
    expect([...backupsToKeep(kept)].sort().reverse()).toEqual(kept);
  });

  test('are made one after the other, listed, and found by their own names only', async () => {
    await makeRecord();
    let minutes = 0;
    const backups = new Backups({
      databaseFile: file('data/fairbend.sqlite'),
      folder: file('data/backups'),
      writtenBy: 'test',
      now: () => new Date(at.getTime() + minutes++ * 60_000),
    });
    await Promise.all([backups.make(), backups.make()]);
    const notes = backups.list();
    expect(notes).toMatchObject([
      { madeAt: '2026-03-01T09:01:00.000Z' },
      { madeAt: '2026-03-01T09:00:00.000Z' },
    ]);
    expect(readdirSync(file('data/backups')).toSorted().reverse()).toEqual(notes.map((note) => note.name));
    expect(backups.fileOf(notes[0].name)).toBe(file(`data/backups/${notes[0].name}`));
    expect(backups.fileOf('../fairbend.sqlite')).toBeUndefined();
  });

  test('say nothing of one given up because the server ends, only of one that failed', async () => {
    await makeRecord();
    const said: string[] = [];
    const begin = (databaseFile: string) => {
      const backups = new Backups({ databaseFile, folder: file('data/b'), writtenBy: 'test', now: () => at });
      backups.start((error) => said.push(error.message));
      return backups;
    };
    await begin(file('data/fairbend.sqlite')).close();
    expect(said).toEqual([]);
    const failing = begin(file('nowhere/fairbend.sqlite'));
    await expect.poll(() => said.length).toBe(1);
    await failing.close();
  });

  test('never grow fewer by making one, and never lose the one just made', () => {
    let made: string[] = [];
    for (let hour = 0; hour < 24 * 120; hour += 7) {
      const now = new Date(Date.UTC(2026, 0, 1) + hour * 3600e3);
      const before = made.length;
      made = [...made, now.toISOString()];
      const going = backupToDrop(made, now.toISOString(), now);
      made = made.filter((instant) => instant !== going);
      expect(made.length).toBeGreaterThanOrEqual(before);
      expect(made).toContain(now.toISOString());
      expect(made.length).toBeLessThanOrEqual(5 + 7 + 8 + 12 + 1);
    }
  });

  test('with the clock 500 days back, or forth and back again, keep what is good', async () => {
    await makeRecord();
    let now = at;
    const backups = new Backups({
      databaseFile: file('data/fairbend.sqlite'),
      folder: file('data/backups'),
      writtenBy: 'test',
      now: () => now,
    });
    const byHand = await backups.make(true);
    const names = new Set<string>();
    for (const days of [0, 1, 900, 2, -500, -500, -499, 3]) {
      now = new Date(at.getTime() + days * 24 * 3600e3 + 60_000);
      const before = backups.list().length;
      const { name } = await backups.make();
      names.add(name);
      expect(backups.fileOf(name)).toBeDefined();
      expect(backups.list().length).toBeGreaterThanOrEqual(before);
    }
    expect(names.size).toBe(8);
    expect(backups.fileOf(byHand.name)).toBeDefined();
  });

  test('made by hand outlive any number of others', async () => {
    await makeRecord();
    let minutes = 0;
    const backups = new Backups({
      databaseFile: file('data/fairbend.sqlite'),
      folder: file('data/backups'),
      writtenBy: 'test',
      now: () => new Date(at.getTime() + minutes++ * 60_000),
    });
    const { name } = await backups.make(true);
    for (let more = 0; more < 9; more++) await backups.make();
    expect(backups.fileOf(name)).toBeDefined();
    expect(backups.list().filter((note) => !note.byHand)).toHaveLength(5);
  });

  test('that fail say so until one succeeds', async () => {
    const backups = new Backups({
      databaseFile: file('data/fairbend.sqlite'),
      folder: file('data/backups'),
      writtenBy: 'test',
      now: () => at,
    });
    await expect(backups.make()).rejects.toThrow(/cannot be opened/);
    expect(backups.failure).toMatchObject({
      at: at.toISOString(),
      message: expect.stringMatching(/cannot be/),
    });
    await makeRecord();
    await backups.make();
    expect(backups.failure).toBeUndefined();
  });
});

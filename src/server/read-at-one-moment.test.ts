/** On SQLite, and with TEST_DATABASE_URL=postgres://… on that server. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { operation } from '../../test/kit/one-operation.ts';
import { scratchDatabase } from '../../test/kit/scratch-database.ts';
import { exportBuild } from './build-files.ts';
import { ChangeFeed } from './change-feed.ts';
import { openDatabase } from './database.ts';
import { Keeper } from './keeper.ts';
import { readAtOneMoment } from './read-at-one-moment.ts';
import { runTask } from './thread/run-task.ts';

const server = process.env.TEST_DATABASE_URL;
let folder = '';
let place = '';
let keeper: Keeper;
let drop: () => Promise<void>;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-moment-'));
  const scratch = server ? await scratchDatabase(server) : undefined;
  place = scratch?.address ?? join(folder, 'fairbend.sqlite');
  drop = async () => scratch?.drop();
  keeper = new Keeper((await openDatabase(place)).repository, new ChangeFeed());
});
afterEach(async () => {
  await keeper.repository.close();
  await drop();
  rmSync(folder, { recursive: true, force: true });
});

test('what is written while a record is read is not in what is read', async () => {
  const { id } = await keeper.createWith('build', [operation(1, 'Brook')]);
  const seen = await readAtOneMoment(place, async (repository) => {
    const before = await repository.operationsAfter(id, 0, 10);
    await keeper.append(id, [operation(2, 'Beck')]);
    await keeper.createWith('build', [operation(1, 'Burn')]);
    return [before, await repository.operationsAfter(id, 0, 10), await repository.documentIds()];
  });
  expect(seen).toEqual([seen[0], seen[0], [id]]);
  expect(seen[0]).toHaveLength(1);
  expect((await keeper.repository.documentIds()).length).toBe(2);
});

test('who reads a record so cannot write in it', async () => {
  const writing = readAtOneMoment(place, (repository) =>
    repository.create({ id: 'b', kind: 'build', at: '2026-03-01T09:00:00Z', operations: [] }),
  );
  await expect(writing).rejects.toThrow();
  expect(await keeper.repository.documentIds()).toEqual([]);
});

test('a build read by its place is the file that this thread would make of it', async () => {
  const { id } = await keeper.createWith('build', [operation(1, 'Brook')]);
  await keeper.shop();
  const by = { attachments: true, writtenBy: 'test' };
  expect(await runTask('writeBuild', { place, id, ...by })).toBe(await exportBuild(keeper, id, by));
});

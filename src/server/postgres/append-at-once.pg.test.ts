import pg from 'pg';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type TestApp, testApp } from '../../../test/kit/test-app.ts';
import type { Operation } from '../../record/operation.ts';
import { openDatabase } from '../database.ts';
import { appendIn } from '../sql-append.ts';

let app: TestApp;
let build = '';
beforeEach(async () => {
  app = await testApp();
  build = (await app.keeper.create({ kind: 'build' })).id;
});
afterEach(() => app.close());

const at = '2026-03-01T09:00:00.000Z';

function drop(clock: number, index = 0, value = 1): Operation {
  return {
    id: `d1-a.${clock}.${index}`,
    device: 'd1-a',
    clock,
    gesture: `g.${clock}`,
    path: ['readings', `r${index}`, 'drop'],
    old: null,
    value: { si: value, text: `"${value}" \\ {é, 🎣}` },
    at,
  };
}

const stored = () => app.keeper.repository.operationsAfter(build, 0, 1000);
const lastSeq = async () => (await app.keeper.findOrThrow(build)).lastSeq;

test('what the one statement stores is what the steps on SQLite store', async () => {
  const operations = [drop(3, 0), drop(3, 1), drop(4)];
  const start = await lastSeq();
  const before = await app.db.selectFrom('documents').selectAll().executeTakeFirstOrThrow();
  const atOnce = await app.keeper.append(build, operations);
  const { db } = await openDatabase(':memory:');
  await db.insertInto('documents').values(before).execute();
  const arrival = atOnce.stored[0].receivedAt;
  const inSteps = await db.transaction().execute((trx) => appendIn(trx, build, operations, arrival));
  expect(atOnce.accepted).toEqual(inSteps.accepted);
  const rows = (of: typeof db) =>
    of.selectFrom('operations').where('seq', '>', start).orderBy('seq').selectAll().execute();
  expect(await rows(app.db)).toEqual(await rows(db));
  expect(await app.db.selectFrom('documents').selectAll().execute()).toEqual(
    await db.selectFrom('documents').selectAll().execute(),
  );
  const [row] = await app.db.selectFrom('documents').where('id', '=', build).selectAll().execute();
  expect(row).toMatchObject({ last_seq: start + 3, clock: 4 });
  expect(atOnce.stored).toEqual((await stored()).slice(start));
  await db.destroy();
});

test('a batch sent twice, also at the same time, is stored once and acknowledged alike', async () => {
  const batch = [drop(3, 0), drop(3, 1)];
  const answers = await Promise.all(Array.from({ length: 12 }, () => app.keeper.append(build, batch)));
  for (const { accepted } of answers) expect(accepted).toEqual(answers[0].accepted);
  expect(answers.filter((answer) => answer.stored.length > 0)).toHaveLength(1);
  expect((await stored()).filter(({ device }) => device === 'd1-a')).toHaveLength(2);
  expect((await stored()).map(({ seq }) => seq)).toEqual((await stored()).map((_, index) => index + 1));
});

test('a batch of which half is there already adds the other half', async () => {
  await app.keeper.append(build, [drop(3, 0)]);
  const { accepted, stored: added } = await app.keeper.append(build, [drop(3, 0), drop(3, 1), drop(3, 1)]);
  expect(accepted.map(({ id }) => id)).toEqual(['d1-a.3.0', 'd1-a.3.1', 'd1-a.3.1']);
  expect(added.map(({ id }) => id)).toEqual(['d1-a.3.1']);
});

test('a batch that says something else under the same name stores nothing of it', async () => {
  await app.keeper.append(build, [drop(3, 0)]);
  const before = await stored();
  await expect(app.keeper.append(build, [drop(5), drop(3, 0, 2)])).rejects.toThrow(/says something else/);
  expect(await stored()).toEqual(before);
  expect(await lastSeq()).toBe(before.length);
});

test('a clock too far ahead, and a build that is not there, are refused in words', async () => {
  await expect(app.keeper.append(build, [drop(9_000_000)])).rejects.toMatchObject({
    findings: [{ message: expect.stringMatching(/too far ahead/) }],
  });
  await expect(app.keeper.append('none', [drop(3)])).rejects.toThrow(/none/);
  await expect(app.keeper.repository.append('none', [drop(3)], at)).rejects.toThrow(/none/);
});

test('a title still renews the list', async () => {
  const title: Operation = { ...drop(3), path: ['about', '-', 'title'], value: 'Pike rod' };
  await app.keeper.append(build, [drop(4), title]);
  expect(await app.keeper.findOrThrow(build)).toMatchObject({ title: 'Pike rod' });
});

test('an ordinary edit is one statement', async () => {
  const texts: string[] = [];
  const query = vi.spyOn(pg.Client.prototype, 'query');
  try {
    await app.keeper.append(build, [drop(3, 0)]);
    query.mockClear();
    await app.keeper.append(build, [drop(4, 0), drop(4, 1)]);
    for (const [first] of query.mock.calls as unknown as [string | { text: string }][])
      texts.push(typeof first === 'string' ? first : first.text);
  } finally {
    query.mockRestore();
  }
  expect(texts).toHaveLength(1);
  expect(texts[0]).toMatch(/update documents[\s\S]*insert into operations/);
});

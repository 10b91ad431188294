import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { history } from '../../test/kit/arbitrary-record.ts';
import { operation } from '../../test/kit/one-operation.ts';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';
import type { DocumentAnswer, OpeningAnswer } from '../record/api.ts';
import { applyOperations, emptyDocument } from '../record/document.ts';
import type { Operation } from '../record/operation.ts';
import { stateOf } from '../record/standing.ts';
import { ChangeFeed } from './change-feed.ts';
import { Histories } from './histories.ts';
import { Keeper } from './keeper.ts';

let bench: TestApp;
beforeEach(async () => {
  bench = await testApp();
});
afterEach(() => bench.close());

const limits = { newest: 3, mostReplayed: 6 };
const histories = () => new Histories(bench.keeper.repository, limits);
const replayed = (log: readonly Operation[]) => applyOperations(emptyDocument('b', 'build'), log);
const asPlain = ({ cells, clock }: ReturnType<typeof replayed>) => ({ cells: new Map(cells), clock });

const snapshotOf = (document: string) =>
  bench.db.selectFrom('snapshots').where('document', '=', document).selectAll().executeTakeFirst();

/** A build of so many changes of its title and note; answers its id. */
async function longBuild(count: number): Promise<string> {
  const log = Array.from({ length: count }, (_, index) =>
    operation(index + 1, `text ${index + 1}`, ['about', '-', index % 2 === 0 ? 'title' : 'note']),
  );
  return (await bench.keeper.createWith('build', log)).id;
}

describe('a document opened by its snapshot', () => {
  test('stands as its whole history leaves it, whatever that is and in whatever pieces it came', async () => {
    let count = 0;
    await fc.assert(
      fc.asyncProperty(
        history,
        fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 12 }),
        async (log, cuts) => {
          const document = { id: `b${count++}`, kind: 'build' as const };
          await bench.keeper.repository.create({ ...document, at: bench.keeper.timestamp(), operations: [] });
          let stored = 0;
          for (const cut of [...cuts, log.length]) {
            const piece = log.slice(stored, stored + cut);
            await bench.keeper.repository.append(document.id, piece, bench.keeper.timestamp());
            stored += piece.length;
            const state = await histories().state({ ...document, lastSeq: stored });
            expect(asPlain(state)).toEqual(asPlain(replayed(log.slice(0, stored))));
          }
        },
      ),
      { numRuns: process.env.TEST_DATABASE_URL ? 15 : 60 },
    );
  });

  test('replays only what came after it', async () => {
    const id = await longBuild(20);
    const document = { id, kind: 'build' as const, lastSeq: 20 };
    const { seq, operations } = await histories().standing(document);
    expect(seq).toBe(17);
    expect(operations.map((one) => one.value)).toEqual(['text 1', 'text 2', 'text 16', 'text 17']);
    expect(await snapshotOf(id)).toMatchObject({ seq: 17 });
    // Up to the limit it stays; beyond, it is made anew from itself.
    expect((await histories().standing({ ...document, lastSeq: 23 })).seq).toBe(17);
    const more = [21, 22, 23, 24].map((clock) => operation(clock, `text ${clock}`));
    await bench.keeper.append(id, more);
    expect((await histories().standing({ ...document, lastSeq: 24 })).seq).toBe(21);
  });

  test('as it stood after any of its operations', async () => {
    const id = await longBuild(20);
    await histories().standing({ id, kind: 'build', lastSeq: 20 });
    for (const seq of [0, 1, 5, 16, 17, 18, 20]) {
      const { cells } = await histories().stateAfter({ id, kind: 'build', lastSeq: 20 }, seq);
      const odd = seq % 2 === 1 ? seq : seq - 1;
      expect(cells.get('about/-/title')?.value).toBe(odd > 0 ? `text ${odd}` : undefined);
    }
  });
});

describe('a snapshot that does not agree', () => {
  const spoilt = async (change: Partial<{ seq: number; link: string; standing: string; seal: string }>) => {
    const id = await longBuild(20);
    await histories().standing({ id, kind: 'build', lastSeq: 20 });
    await bench.db.updateTable('snapshots').set(change).where('document', '=', id).execute();
    const state = await histories().state({ id, kind: 'build', lastSeq: 20 });
    return { value: state.cells.get('about/-/title')?.value, kept: await snapshotOf(id) };
  };

  test.each([
    ['another text', { standing: '[]' }],
    ['no JSON', { standing: '[{' }],
    ['another place', { seq: 16 }],
    ['another operation', { link: 'f'.repeat(32) }],
    ['another checksum', { seal: 'f'.repeat(32) }],
  ])('(%s) is thrown away and made anew; what is shown is right', async (_, change) => {
    const { value, kept } = await spoilt(change);
    expect(value).toBe('text 19');
    expect(kept).toMatchObject({ seq: 17 });
    expect(JSON.parse(kept!.standing)).toHaveLength(4);
  });

  test('goes with what is erased, and comes back without it', async () => {
    const keeper = new Keeper(bench.keeper.repository, new ChangeFeed(), undefined, limits);
    const log = Array.from({ length: 20 }, (_, index) =>
      operation(index + 1, `angler ${index + 1}`, ['about', '-', 'customer']),
    );
    const { id } = await keeper.createWith('build', log);
    expect((await snapshotOf(id))?.standing).toContain('angler');
    await keeper.erase(id, [['about', '-', 'customer']]);
    expect(await snapshotOf(id)).toBeUndefined();
    expect(JSON.stringify(await keeper.opening(id))).not.toContain('angler');
    expect((await snapshotOf(id))?.standing).not.toContain('angler');
  });

  test('is not kept where the history was erased while it was read', async () => {
    const id = await longBuild(20);
    const { repository } = bench.keeper;
    await repository.makeSnapshot(id, 17, async () => {
      await repository.erase(id, [['about', '-', 'title']]);
      return { seq: 17, operations: [] };
    });
    expect(await snapshotOf(id)).toBeUndefined();
  });
});

test('a page opens a document of 10,000 changes with its end alone, and what it has is all of it', async () => {
  const id = await longBuild(10_000);
  const opening = (await (await bench.ask('GET', `/api/documents/${id}/opening`)).json()) as OpeningAnswer;
  expect(opening.standing.seq).toBe(9000);
  expect(opening.operations).toHaveLength(1000);
  expect(opening.more).toBe(false);
  const state = applyOperations(stateOf(opening.standing, id, 'build'), opening.operations);
  expect(state.cells.get('about/-/title')?.value).toBe('text 9999');
  expect(state.clock).toBe(10_000);
  // What lies before is read piece by piece.
  const earlier = await bench.ask('GET', `/api/documents/${id}/operations?after=7000&limit=2000`);
  const { operations, lastSeq } = (await earlier.json()) as OpeningAnswer;
  expect([operations[0].seq, operations.at(-1)!.seq, lastSeq]).toEqual([7001, 9000, 9000]);
  const then = await bench.ask('GET', `/api/documents/${id}/after/5000`);
  const { cells } = (await then.json()) as DocumentAnswer;
  expect(new Map(cells).get('about/-/note')?.value).toBe('text 5000');
});

test('a damaged history is not swallowed by a snapshot: it is said', async () => {
  const id = await longBuild(4000);
  await bench.db.deleteFrom('snapshots').execute();
  await bench.db
    .updateTable('operations')
    .set({ new_value: '"other"' })
    .where('document', '=', id)
    .where('seq', '=', 10)
    .execute();
  const opening = (await (await bench.ask('GET', `/api/documents/${id}/opening`)).json()) as OpeningAnswer;
  expect(opening.damage).toMatch(/Change 10 .*damaged/);
  expect(opening.standing.operations).toEqual([]);
  expect(await snapshotOf(id)).toBeUndefined();
});

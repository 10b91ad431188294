import { expect, test } from 'vitest';
import { FakeServer } from '../../../test/kit/fake-server.ts';
import type { Operation } from '../../record/operation.ts';
import { createApi } from './api.ts';
import { missingThere } from './missing-there.ts';

const written = (clock: number): Operation => ({
  id: `d1-a.${clock}.0`,
  device: 'd1-a',
  clock,
  gesture: `g${clock}`,
  path: ['about', '-', 'title'],
  old: null,
  value: `title ${clock}`,
  at: '2026-03-01T09:00:00Z',
});
const log = [1, 2, 3, 4, 5, 6, 7, 8].map(written);

/** It answers three operations at a time, so all of this is read over several answers. */
function serverWith(clocks: readonly number[]) {
  const server = new FakeServer();
  server.arrive(clocks.map(written));
  return createApi(server.fetch);
}

test('what the server lost is missing there, in the order of the page, and nothing else is', async () => {
  const compared = await missingThere(serverWith([1, 2, 4, 5, 7]), 'b1', log);
  expect(compared?.missing).toEqual([written(3), written(6), written(8)]);
  expect(compared?.there.map(({ id }) => id)).toEqual([1, 2, 4, 5, 7].map((clock) => written(clock).id));
});

test('nothing is missing where the server has all of it, and more', async () => {
  const compared = await missingThere(serverWith([1, 2, 3, 4, 5, 6, 7, 8, 9]), 'b1', log);
  expect(compared?.missing).toEqual([]);
  expect(compared?.there).toHaveLength(9);
});

test('a server that cannot read its own log is not told what it lacks', async () => {
  const api = serverWith([1, 2]);
  const damaged = {
    operationsAfter: async (id: string, after: number) => ({
      ...(await api.operationsAfter(id, after)),
      damage: 'Change 2 of this document cannot be read as stored',
    }),
  };
  expect(await missingThere(damaged, 'b1', log)).toBeUndefined();
});

import type { Operation } from '../../src/record/operation.ts';

/** When all of them were done. */
export const at = '2026-03-01T09:00:00Z';

/** An operation of an invented device: by default it names the build. */
export const operation = (clock: number, value: string, path = ['about', '-', 'title']): Operation => ({
  id: `d1-a.${clock}.0`,
  device: 'd1-a',
  clock,
  gesture: `g.${clock}`,
  path: path as unknown as Operation['path'],
  old: null,
  value,
  at,
});

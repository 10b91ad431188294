import { expect, test } from 'vitest';
import type { RecordStanding } from '../../../record/record-api.ts';
import { recordSentences } from './record-sentences.ts';

const now = new Date('2026-03-10T09:00:00Z');
const well: RecordStanding = {
  wholeAt: '2026-03-10T08:00:00Z',
  reading: null,
  damaged: [],
  lost: 0,
  backups: { madeAt: '2026-03-10T08:00:00Z', failure: null },
  space: { record: 14_200_000, backups: 900_000 },
  found: null,
};

test('all well is one quiet line', () => {
  const { wrong, quiet } = recordSentences(well, now);
  expect(wrong).toEqual([]);
  expect(quiet).toMatch(/last backup .*2026.* · record last read whole and good .*2026/);
  expect(quiet).toMatch(/the record takes 14.2 MB, its backups 900 kB/);
});

test.each<[string, Partial<RecordStanding>, RegExp]>([
  ['a damaged build', { damaged: [{ id: 'b', title: 'Brook', what: '' }] }, /Not as stored any more: Brook/],
  ['lost changes', { lost: 3 }, /3 saved changes were missing/],
  [
    'a backup that failed',
    { backups: { madeAt: null, failure: { at: well.wholeAt!, message: 'disk full' } } },
    /No backup was made on .*: disk full/,
  ],
  [
    'an old backup',
    { backups: { madeAt: '2026-03-07T08:00:00Z', failure: null } },
    /last good backup is of .*7/,
  ],
  [
    'a backup beside an empty shelf',
    { found: { name: 'n', madeAt: well.wholeAt!, builds: 2 } },
    /with 2 builds lies beside it/,
  ],
])('%s is said, and the quiet line is not', (_, part, words) => {
  const { wrong, quiet } = recordSentences({ ...well, ...part }, now);
  expect(wrong.join('\n')).toMatch(words);
  expect(quiet).toBe('');
});

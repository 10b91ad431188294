import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readBuildFile } from '../src/record/file-read.ts';
import { type BuildFile, fileVersion } from '../src/record/file-shape.ts';
import { buildFileOf, valuesByRow, writeBuildFile } from '../src/record/file-write.ts';
import { readBuild } from '../src/record/read-build.ts';
import { pastDeedText } from '../src/words/deeds.ts';
import { finishFaultOf, finishFaults } from '../src/words/finish-faults.ts';
import { changeWords } from '../src/words/history.ts';
import { sentenceOf } from '../src/words/sentence.ts';
import { shopWriter } from '../src/words/writer.ts';

const folder = new URL('./fixtures/files-of-0.1/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const opened = (text: string) => {
  const read = readBuildFile(text, '2026-06-01T09:00:00Z');
  if (read.status === 'refused') throw new Error(JSON.stringify(read.findings));
  return read.build;
};

test.each(names)('%s opens equal, every value and every change of it', (name) => {
  const text = readFileSync(new URL(name, folder), 'utf8');
  const file = JSON.parse(text) as BuildFile;
  const { state, operations } = opened(text);
  expect(sortedRows(valuesByRow(state))).toEqual(sortedRows(file.build));
  if (file.history) expect(operations).toEqual(file.history);
  expect(() => readBuild(state)).not.toThrow();
  const again = opened(writeBuildFile(buildFileOf({ history: operations })));
  expect([...again.state.cells]).toEqual([...state.cells]);
  expect(file.version).toBe(fileVersion);
});

test('the file of every field is told by History, gestures of that day in the words they were kept in', () => {
  const { state, operations } = opened(readFileSync(new URL('every-field.json', folder), 'utf8'));
  expect(operations.length).toBeGreaterThan(350);
  const units = { system: 'inch' } as const;
  const teller = {
    document: state,
    units,
    writer: shopWriter(units),
    currency: { code: 'EUR', digits: 2 },
  };
  const told = operations.map(({ path, old, value }) => changeWords(path, old, value, teller));
  expect(told.filter((line) => /undefined|NaN|[a-z][A-Z]/.test(line))).toEqual([]);
  const deeds = operations.map(({ gesture }) => pastDeedText(gesture, 'build'));
  expect(deeds).toContain('Grip s length');
  expect(deeds.at(-1)).toMatch(/^Undid: note of delivery/);
});

test('what went wrong with a coat, kept by its name then and by its id now, has its remedy and its name', () => {
  for (const fault of finishFaults) expect(finishFaultOf(fault.fault)).toBe(fault);
  expect(finishFaultOf('tacky')?.fault).toBe('Stays tacky');
  expect(finishFaultOf('text 175')).toBeUndefined();
  expect(finishFaultOf(undefined)).toBeUndefined();
});

test('why a guide was put aside, kept in words then and by its id now, is said alike', () => {
  const said = (why: string) =>
    sentenceOf({ code: 'guides/rejected', values: { why } }, shopWriter({ system: 'inch' }));
  expect(said('not-round')).toBe('Rejected by you: opening not round.');
  expect(said('opening not round')).toBe(said('not-round'));
});

/** Rows of hand-written files stand in any order, and are given one where they state none; no rows are no collection. */
function sortedRows(build: BuildFile['build']): unknown {
  return Object.fromEntries(
    Object.entries(build)
      .filter(([, rows]) => !Array.isArray(rows) || rows.length > 0)
      .map(([name, rows]) => [
        name,
        Array.isArray(rows)
          ? rows.map(({ order: _, ...row }) => row).sort((a, b) => (String(a.id) < String(b.id) ? -1 : 1))
          : rows,
      ]),
  );
}

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { applyOperations, makeOperations, rows } from '../../../record/document.ts';
import { readBuildFile } from '../../../record/file-read.ts';
import type { Change, DocumentState } from '../../../record/operation.ts';
import { readBuild } from '../../../record/read-build.ts';
import { addedGuide, countChanges } from './guide-rows.ts';

const example = (name: string) => new URL(`../../../../examples/${name}.json`, import.meta.url);

function start(name = 'demo-build'): DocumentState {
  const file = readBuildFile(readFileSync(example(name), 'utf8'), '2026-01-01T00:00:00Z');
  if (file.status === 'refused') throw new Error('the demo is refused');
  return file.build.state;
}
function choicesOf(state: DocumentState) {
  const { choices } = readBuild(state);
  if (!choices) throw new Error('the demo has no choices');
  return choices;
}
const by = { device: 'test-1', gesture: 'test', at: '2026-01-01T00:00:00Z' };
let made = 0;
const write = (state: DocumentState, changes: readonly Change[]) =>
  applyOperations(state, makeOperations(state, changes, by));
const into = (state: DocumentState) => ({
  rows: rows(state, 'guides'),
  newRowId: () => `row${++made}`,
  system: 'mm' as const,
});
const marksOf = (state: DocumentState) => choicesOf(state).guides.map(({ stationM }) => stationM ?? 0);

test('guide after guide is added on the tip’s side of the stripping guide, and the marks still climb', () => {
  let state = start();
  const last = choicesOf(state).guides.at(-1);
  const count = marksOf(state).length;
  for (let more = 1; more <= 12; more++) {
    state = write(state, addedGuide(choicesOf(state), into(state)));
    const marks = marksOf(state);
    expect(marks).toHaveLength(count + more);
    expect(marks).toEqual(marks.toSorted((a, b) => a - b));
    expect(choicesOf(state).guides.at(-1)?.id).toBe(last?.id);
  }
});

test.each([-1, 1])(
  '%i guides more: so many rows at these marks, each kept row with what was measured',
  (more) => {
    const state = start();
    const before = choicesOf(state).guides;
    const count = before.length + more;
    const marks = Array.from({ length: count }, (_, i) => 0.1 + i * 0.15);
    const after = write(state, countChanges(choicesOf(state), marks, into(state)));
    expect(marksOf(after)).toEqual(marks.map((at) => expect.closeTo(at, 6)));
    const { guides } = choicesOf(after);
    const kept = guides.filter(({ id }) => before.some((one) => one.id === id));
    expect(kept).toHaveLength(Math.min(count, before.length));
    expect(guides.at(-1)?.id).toBe(before.at(-1)?.id);
    for (const guide of kept) {
      const { stationM: _, pinned: __, ...same } = before.find(({ id }) => id === guide.id) ?? guide;
      expect(guide).toMatchObject(same);
    }
  },
);

test.each([-1, 1, 2])('%i guides more in a spiral: each place from the reel keeps its angle', (more) => {
  const turned = { si: 0.7, text: '40°' };
  const state = start('demo-casting-spiral');
  const { guides } = choicesOf(state);
  const row = guides.at(-2)!.id!;
  const own = write(state, [{ path: ['guides', row, 'around'], value: turned }]);
  const marks = Array.from({ length: guides.length + more }, (_, i) => 0.1 + i * 0.1);
  const after = write(own, countChanges(choicesOf(own), marks, into(own)));
  const angles = choicesOf(after).guides.map(({ fromTopRad }) => fromTopRad);
  expect(angles).toHaveLength(guides.length + more);
  expect(angles.at(-2)).toBe(turned.si);
  expect(angles.filter((at) => at !== undefined)).toEqual(
    choicesOf(own)
      .guides.map(({ fromTopRad }) => fromTopRad)
      .filter((at) => at !== undefined),
  );
});

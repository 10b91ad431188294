import { expect, test } from 'vitest';
import { planProtocol } from '../../../engine/bench/protocol.ts';
import type { ReadingOption } from '../../../engine/sureness/reading-option.ts';
import { applyOperations, emptyDocument, makeOperations, rows } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { sectionName, setupName } from '../../../record/row-names.ts';
import { layOutReading, layOutSpan } from './lay-out-reading.ts';
import { newSections } from './new-sections.ts';
import { newSpan } from './new-span.ts';
import { planRows } from './plan-rows.ts';

let made = 0;
const newRowId = () => `row${++made}`;
const by = { system: 'inch' as const, newRowId };
const option: ReadingOption = {
  clampFromTipM: 1.0414,
  turnedRad: Math.PI,
  loads: [{ massKg: 0.05, readFromTipM: [0.3] }],
  readings: 1,
  minutes: 2,
};
const plan = planProtocol({
  kind: 'twenty-minute',
  blankLengthM: 2.743,
  tipDropM: ({ clampFromTipM, massKg }) => (clampFromTipM * massKg) / (massKg + 0.2),
});
const options = { ...by, edge: 'upper' as const, clampHeight: null };

/** Everything that lays out rows of its own accord. */
const proposed: Record<string, Change[]> = {
  sections: newSections(4, 'sleeve', newRowId),
  plan: planRows(plan, { ...options, firstOrder: 0 }),
  moved: layOutReading(option, [], undefined, by).changes,
  stretch: newSpan({ order: 7, newRowId }),
  supports: layOutSpan({ ...option, supportsFromTipM: [0.5, 1] }, 8, by).changes,
};

test.each(Object.entries(proposed))('what is laid out keeps ids, never words of ours: %s', (_, changes) => {
  const words = changes.filter(
    ({ path, value }) => path[2] === 'name' || (typeof value === 'string' && /\s/.test(value)),
  );
  expect(words).toEqual([]);
});

test('and is called as it always was', () => {
  const empty = emptyDocument('b', 'build');
  const stamp = { device: 'd-s', gesture: 'g', at: '2026-01-01T00:00:00Z' };
  const state = applyOperations(empty, makeOperations(empty, Object.values(proposed).flat(), stamp));
  expect(rows(state, 'sections').map(sectionName)).toEqual(['tip', 'second', 'third', 'butt']);
  expect(new Set(rows(state, 'setups').map(setupName))).toEqual(
    new Set([
      'Tip over a padded edge',
      'Whole blank level',
      'Clamp moved to half',
      'Clamp moved three quarters up',
      'Clamp at 41 in, turned half over',
      'Two supports',
      'Two supports about 12 in',
    ]),
  );
});

import { expect, test } from 'vitest';
import { planProtocol } from '../../../engine/bench/protocol.ts';
import { applyOperations, emptyDocument, makeOperations, rows } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { readingsAsked, restOfPlan } from './plan-rest.ts';
import { planRows } from './plan-rows.ts';
import { setupRowsOf } from './reading-rows.ts';

let made = 0;
const options = {
  system: 'inch' as const,
  edge: 'upper' as const,
  clampHeight: null,
  firstOrder: 0,
  newRowId: () => `row${++made}`,
};
/** An invented blank; the second time it is known to be a tenth softer. */
const protocol = (kind: 'ten-minute' | 'twenty-minute', stiffness: number) =>
  planProtocol({
    kind,
    blankLengthM: 2.743,
    tipDropM: ({ clampFromTipM, massKg }) => (clampFromTipM * massKg) / (massKg + 0.2 * stiffness),
  });
const setupsOf = (changes: readonly Change[]) => {
  const empty = emptyDocument('b', 'build');
  const operations = makeOperations(empty, changes, {
    device: 'd',
    gesture: 'g',
    at: '2026-01-01T00:00:00Z',
  });
  const document = applyOperations(empty, operations);
  return setupRowsOf((collection) => rows(document, collection));
};
const asked = (changes: readonly Change[]) =>
  setupsOf(changes).flatMap(({ setup, tests }) =>
    tests.flatMap(({ test, readings }) =>
      readings.map(({ fields }) =>
        [setup.id, JSON.stringify(test.fields.hung), fields.atClamp ?? JSON.stringify(fields.fromTip)].join(
          ' ',
        ),
      ),
    ),
  );

test('the twenty minutes after the ten ask for no flag twice under one weight, and for all that is missing', () => {
  const ten = planRows(protocol('ten-minute', 1), options);
  const twenty = protocol('twenty-minute', 0.9);
  const rest = restOfPlan(twenty.setups, setupsOf(ten), options);
  // six readings stand: the tip with nothing hung, four flags and the clamp under the full weight
  expect(readingsAsked(ten)).toBe(6);
  expect(readingsAsked(rest)).toBe(twenty.readingCount - 6);
  // the tip with nothing hung is read once more at the end, on purpose, to show a slipped clamp
  const places = asked([...ten, ...rest]);
  expect(places.length - new Set(places).size).toBe(2);
  expect(setupsOf([...ten, ...rest])).toHaveLength(4);
});

test('on an empty bench the whole protocol is asked', () => {
  const twenty = protocol('twenty-minute', 1);
  expect(readingsAsked(restOfPlan(twenty.setups, [], options))).toBe(twenty.readingCount);
});

test('a clamp at another place is another set-up', () => {
  const ten = planRows(protocol('ten-minute', 1), options);
  const moved = ten.map((change) =>
    change.path[2] === 'clampFromTip' ? { ...change, value: { si: 2.4, text: '2400 mm' } } : change,
  );
  expect(
    setupsOf([...moved, ...restOfPlan(protocol('twenty-minute', 1).setups, setupsOf(moved), options)]),
  ).toHaveLength(5);
});

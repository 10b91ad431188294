import { expect, test } from 'vitest';
import { twoPieceChanges } from '../../test/browser/invented-build.ts';
import { againChanges } from './again.ts';
import { applyOperations, emptyDocument, makeOperations, rows, singleRow } from './document.ts';
import type { Change, DocumentState } from './operation.ts';
import { readBuild } from './read-build.ts';
import { validateValue } from './validate.ts';

function stateOf(changes: readonly Change[]): DocumentState {
  const empty = emptyDocument('b', 'build');
  return applyOperations(
    empty,
    makeOperations(empty, changes, { device: 'd-1', gesture: 'g.1', at: '2026-03-01T09:00:00Z' }),
  );
}

const old = stateOf([
  ...twoPieceChanges(),
  { path: ['wraps', '-', 'threadColour'], value: '#224422' },
  { path: ['handle', '-', 'gluedAt'], value: '2026-02-01T09:00:00Z' },
  { path: ['finish', '-', 'product'], value: 'An invented finish' },
  { path: ['finish', '-', 'wrapsChecked'], value: true },
  { path: ['layout', '-', 'limitLineAngle'], value: { si: 0.26, text: '15°' } },
  ...['top', 'low'].map(
    (id): Change => ({ path: ['sections', id, 'lineSideMethod'], value: 'no difference found' }),
  ),
  { path: ['parts', 'p', 'lot'], value: 'L7' },
  { path: ['prints', 'x', 'sheet'], value: 'strips' },
  { path: ['guides', 'g9', 'kind'], value: 'snake' },
  { path: ['guides', 'g9', 'gone'], value: true },
]);
const again = stateOf(againChanges(old, { id: 'old1', title: 'Invented two-piece' }));

test('what was chosen holds', () => {
  expect(rows(again, 'guides')).toHaveLength(6);
  expect(singleRow(again, 'wraps').fields.threadColour).toBe('#224422');
  expect(singleRow(again, 'handle').fields.gripFront).toBeDefined();
  expect(singleRow(again, 'finish').fields.product).toBe('An invented finish');
  expect(singleRow(again, 'layout').fields.limitLineAngle).toBeDefined();
  expect(rows(again, 'sections').map(({ fields }) => fields.name)).toEqual(['tip', 'butt']);
  expect(singleRow(again, 'about').fields).toMatchObject({
    againFrom: 'old1',
    title: 'Invented two-piece',
    lineWeight: '4',
  });
});

test('what has to be measured, marked or checked anew is empty', () => {
  for (const { fields } of rows(again, 'sections')) {
    expect(fields.length).toBeUndefined();
    expect(fields.mass).toBeUndefined();
    expect(fields.lineSideMethod).toBeUndefined();
  }
  expect(rows(again, 'diameters')).toEqual([]);
  expect(rows(again, 'parts')).toEqual([]);
  expect(rows(again, 'prints')).toEqual([]);
  expect(rows(again, 'guides').every(({ fields }) => fields.station === undefined)).toBe(true);
  expect(singleRow(again, 'handle').fields.gluedAt).toBeUndefined();
  expect(singleRow(again, 'finish').fields.wrapsChecked).toBeUndefined();
});

test('the protocol stands with its weights and flags, every drop still to be read', () => {
  expect(rows(again, 'readings')).toHaveLength(rows(old, 'readings').length);
  expect(
    rows(again, 'readings').every(({ fields }) => fields.drop === undefined && fields.fromTip !== undefined),
  ).toBe(true);
  expect(rows(again, 'tests').map(({ fields }) => fields.hung)).toEqual(
    rows(old, 'tests').map(({ fields }) => fields.hung),
  );
});

test('the old marks are the start of the new layout', () => {
  expect(singleRow(again, 'layout').fields).toMatchObject({
    startKind: 'own',
    startUnit: 'mm',
    startFrom: 'tip',
  });
  const measured = stateOf([
    ...againChanges(old, { id: 'old1', title: '' }),
    ...[...old.cells]
      .filter(([key]) => /^(sections|diameters)\//.test(key))
      .map(([key, { value }]): Change => ({ path: key.split('/') as never, value })),
  ]);
  const { choices } = readBuild(measured);
  expect(choices?.start).toMatchObject({ kind: 'list' });
  const start = choices?.start.kind === 'list' ? choices.start.fromTipM : [];
  [4, 11, 20, 31, 45, 60].forEach((inches, i) => {
    expect(start[i]).toBeCloseTo(inches * 0.0254, 4);
  });
});

test('every value may stand where it is put', () => {
  for (const { path, value } of againChanges(old, { id: 'old1', title: 'x' }))
    expect(validateValue('build', path, value)).toEqual([]);
});

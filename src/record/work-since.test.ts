import { expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { Change, Operation } from './operation.ts';
import type { FieldValue } from './schema.ts';
import { changedSince, workDone } from './work-since.ts';

const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
const put = (collection: string, row: string, fields: Record<string, FieldValue>): Change[] =>
  Object.entries(fields).map(([field, value]) => ({ path: [collection, row, field], value }));

/** Gestures one after the other, as a page writes them. */
function logOf(...gestures: Change[][]) {
  let state = emptyDocument('b', 'build');
  const log: Operation[] = [];
  for (const [index, changes] of gestures.entries()) {
    const at = new Date(Date.UTC(2026, 0, 1, index)).toISOString();
    const operations = makeOperations(state, changes, { device: 'd-1', gesture: `g${index}`, at });
    log.push(...operations);
    state = applyOperations(state, operations);
  }
  return { log, state };
}
const blank: Change[] = [
  ...put('sections', 's', { order: 1, name: 'tip', length: mm(1400), joint: 'sleeve', overlap: mm(50) }),
  ...put('sections', 't', { order: 2, name: 'butt', length: mm(1400) }),
  ...put('diameters', '1', { section: 's', fromOwnTip: mm(0), outside: mm(1.7) }),
  ...put('diameters', '2', { section: 't', fromOwnTip: mm(1400), outside: mm(9.8) }),
  ...[110, 320, 640, 1100, 1900].flatMap((at, index) =>
    put('guides', `g${index}`, { order: index, kind: 'snake', size: '1', station: mm(at) }),
  ),
];
const print = (id: string, sheet: string) => put('prints', id, { sheet, paper: 'a4', revision: 'aaa' });
const said = ({ log, state }: ReturnType<typeof logOf>) =>
  workDone(log).map((done) => [done.words, changedSince(log, done, state)]);

test('strips that were printed stand until a guide moves; then it is said which, how far and which way', () => {
  expect(said(logOf(blank, print('p', 'strips')))).toEqual([['the strips were printed', []]]);
  const moved = logOf(blank, print('p', 'strips'), put('guides', 'g3', { station: mm(1112) }));
  expect(said(moved)).toEqual([
    [
      'the strips were printed',
      ['guide 4 moved 12.0 mm towards the butt, to 1112 mm (43 3⁄4 in) from the tip'],
    ],
  ]);
});

test('a print of today stands for the one before it', () => {
  const again = logOf(
    blank,
    print('p', 'strips'),
    put('guides', 'g3', { station: mm(1112) }),
    print('q', 'strips'),
  );
  expect(said(again)).toEqual([['the strips were printed', []]]);
});

test('the blank measured again is said at every sheet that hangs on it', () => {
  const measured = logOf(
    blank,
    print('p', 'marks'),
    print('q', 'wraps'),
    put('sections', 's', { length: mm(1396) }),
  );
  for (const [, changes] of said(measured)) {
    expect((changes as string[])[0]).toMatch(/^tip is now 1396 mm .* long, was 1400 mm/);
  }
  expect(said(logOf(blank, print('p', 'wraps'), put('sections', 's', { overlap: mm(53) })))[0][1]).toEqual([
    'the joint below tip now sits 3.0 mm deeper',
  ]);
});

test('each work hears of what it hangs on, and of nothing else', () => {
  const sized = logOf(blank, print('p', 'rack'), print('q', 'strips'), put('guides', 'g0', { size: '1/0' }));
  expect(said(sized)).toEqual([
    ['the rack sheet was printed', ['guide 1 is now snake 1/0, was snake 1']],
    ['the strips were printed', []],
  ]);
  const wrapped = logOf(
    blank,
    put('benchDone', 'x', { task: 'wrap-tip-top', doneAt: '2026-01-02T00:00:00Z' }),
    put('wraps', '-', { tipWrap: mm(9) }),
  );
  expect(said(wrapped)).toEqual([
    ['the last wrap was ticked off', ['Tip-top is now 9.0 mm long, was 6.0 mm']],
  ]);
  const glued = logOf(
    blank,
    put('handle', '-', { gripFront: mm(260), gluedAt: '2026-01-02T00:00:00Z' }),
    put('handle', '-', { gripFront: mm(270) }),
  );
  expect(said(glued)).toEqual([
    ['the handle was glued', ['The front of the grip is now 270 mm (10 5⁄8 in), was 260 mm (10 1⁄4 in)']],
  ]);
});

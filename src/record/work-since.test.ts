import { munkres } from 'munkres';
import { expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { Change, Operation } from './operation.ts';
import { stateAt } from './past.ts';
import type { FieldValue } from './schema.ts';
import { withHabits } from './shop-habits.ts';
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

/** What was said while the shop's habits changed under the build, an hour a gesture from midnight. */
function saidInShop({ log, state }: ReturnType<typeof logOf>, shop: Operation[]) {
  const now = applyOperations(emptyDocument('s', 'shop'), shop);
  return workDone(log).map((done) => [
    done.words,
    changedSince(log, done, state, {
      habits: (build, at) => withHabits(build, at === undefined ? now : stateAt(shop, at, 'shop')),
      assign: munkres,
    }),
  ]);
}
function shopLog(...changes: [hour: number, change: Change][]): Operation[] {
  let state = emptyDocument('s', 'shop');
  return changes.flatMap(([hour, change]) => {
    const at = new Date(Date.UTC(2026, 0, 1, hour)).toISOString();
    const made = makeOperations(state, [change], { device: 'd-2', gesture: 'habit', at });
    state = applyOperations(state, made);
    return made;
  });
}
const habit = (key: string, value: FieldValue): Change => ({
  path: [key.split('/')[0], '-', key.split('/')[1]],
  value,
});

test('a habit of the shop that changed after the print is said; one that stood before it is not', () => {
  const build = logOf(blank, print('p', 'wraps'));
  const stood = shopLog([0, habit('wraps/tipWrap', mm(9))]);
  expect(saidInShop(build, stood)).toEqual([['the wrap sheet was printed', []]]);
  const changed = shopLog([0, habit('wraps/tipWrap', mm(9))], [2, habit('wraps/tipWrap', mm(5))]);
  expect(saidInShop(build, changed)).toEqual([
    ['the wrap sheet was printed', ['Tip-top is now 5.0 mm long, was 9.0 mm']],
  ]);
  const own = logOf(blank, put('wraps', '-', { tipWrap: mm(7) }), print('p', 'wraps'));
  expect(saidInShop(own, shopLog([5, habit('wraps/tipWrap', mm(5))]))).toEqual([
    ['the wrap sheet was printed', []],
  ]);
});

test('the finish sheet, the glue and the rack hear of the habits they hang on', () => {
  const finish = logOf(blank, print('p', 'finish'));
  expect(saidInShop(finish, shopLog([3, habit('finish/turnFor', { si: 14_400, text: '4 h' })]))).toEqual([
    ['the finish sheet was printed', ['Turning: now 4 h, was 6 h']],
  ]);
  const mixed = saidInShop(finish, shopLog([3, habit('finish/partA', 3)]))[0][1];
  expect(mixed).toEqual([expect.stringMatching(/^The mix: now .* ml, .* to a coat, was 2\.5 \+ 2\.5 ml/)]);
  const glued = logOf(blank, put('handle', '-', { gripFront: mm(260), gluedAt: '2026-01-01T01:00:00Z' }));
  expect(saidInShop(glued, shopLog([3, habit('handle/arborCount', 4)]))).toEqual([
    ['the handle was glued', ['Arbors: now 4 of 10.00 mm, was 3 of 10.00 mm']],
  ]);
  const bag = ['slight', 'straight'].flatMap((straightness, index) =>
    put('bag', `b${index}`, { order: index, size: '1', straightness }),
  );
  const rack = logOf(blank, bag, print('p', 'rack'));
  expect(saidInShop(rack, [])).toEqual([['the rack sheet was printed', []]]);
  const stricter = saidInShop(rack, shopLog([3, habit('sorting/ofDiameterPercent', 0.5)]));
  expect((stricter[0][1] as string[])[0]).toMatch(/^place \d now takes none of the bag, was number \d$/);
});

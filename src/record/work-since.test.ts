import { munkres } from 'munkres';
import { expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { Operation, Change as Write } from './operation.ts';
import { stateAfter, stateAt } from './past.ts';
import type { FieldValue } from './schema.ts';
import { withHabits } from './shop-habits.ts';
import { type Change, changedSince, workDone } from './work-since.ts';

const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
const put = (collection: string, row: string, fields: Record<string, FieldValue>): Write[] =>
  Object.entries(fields).map(([field, value]) => ({ path: [collection, row, field], value }));

/** Gestures one after the other, as a page writes them. */
function logOf(...gestures: Write[][]) {
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
const blank: Write[] = [
  ...put('sections', 's', { order: 1, name: 'tip', length: mm(1400), joint: 'sleeve', overlap: mm(50) }),
  ...put('sections', 't', { order: 2, name: 'butt', length: mm(1400) }),
  ...put('diameters', '1', { section: 's', fromOwnTip: mm(0), outside: mm(1.7) }),
  ...put('diameters', '2', { section: 't', fromOwnTip: mm(1400), outside: mm(9.8) }),
  ...[110, 320, 640, 1100, 1900].flatMap((at, index) =>
    put('guides', `g${index}`, { order: index, kind: 'snake', size: '1', station: mm(at) }),
  ),
];
const tipWrap = (lengthM: number, wasM: number) => ({
  kind: 'wrap-length',
  wrap: 'tip-top',
  lengthM: expect.closeTo(lengthM, 9),
  wasM: expect.closeTo(wasM, 9),
});
const print = (id: string, sheet: string) => put('prints', id, { sheet, paper: 'a4', revision: 'aaa' });
const said = ({ log, state }: ReturnType<typeof logOf>) =>
  workDone(log).map((done) => [done.deed, changedSince(stateAfter(log, done.upTo, 'build'), done, state)]);

test('strips that were printed stand until a guide moves; then it is said which, how far and which way', () => {
  expect(said(logOf(blank, print('p', 'strips')))).toEqual([['strips', []]]);
  const moved = logOf(blank, print('p', 'strips'), put('guides', 'g3', { station: mm(1112) }));
  expect(said(moved)).toEqual([
    ['strips', [{ kind: 'guide-moved', guide: 4, towardsButtM: expect.closeTo(0.012, 9), fromTipM: 1.112 }]],
  ]);
});

test('a print of today stands for the one before it', () => {
  const again = logOf(
    blank,
    print('p', 'strips'),
    put('guides', 'g3', { station: mm(1112) }),
    print('q', 'strips'),
  );
  expect(said(again)).toEqual([['strips', []]]);
});

test('the blank measured again is said at every sheet that hangs on it', () => {
  const measured = logOf(
    blank,
    print('p', 'marks'),
    print('q', 'wraps'),
    put('sections', 's', { length: mm(1396) }),
  );
  for (const [, changes] of said(measured)) {
    expect((changes as Change[])[0]).toEqual({
      kind: 'section-length',
      section: 'tip',
      lengthM: 1.396,
      wasM: 1.4,
    });
  }
  expect(said(logOf(blank, print('p', 'wraps'), put('sections', 's', { overlap: mm(53) })))[0][1]).toEqual([
    { kind: 'joint-depth', section: 'tip', deeperM: expect.closeTo(0.003, 9) },
  ]);
});

test('each work hears of what it hangs on, and of nothing else', () => {
  const sized = logOf(blank, print('p', 'rack'), print('q', 'strips'), put('guides', 'g0', { size: '1/0' }));
  expect(said(sized)).toEqual([
    ['rack', [{ kind: 'guide-size', guide: 1, name: 'snake 1/0', was: 'snake 1' }]],
    ['strips', []],
  ]);
  const wrapped = logOf(
    blank,
    put('benchDone', 'x', { task: 'wrap-tip-top', doneAt: '2026-01-02T00:00:00Z' }),
    put('wraps', '-', { tipWrap: mm(9) }),
  );
  expect(said(wrapped)).toEqual([['last-wrap', [tipWrap(0.009, 0.006)]]]);
  const glued = logOf(
    blank,
    put('handle', '-', { gripFront: mm(260), gluedAt: '2026-01-02T00:00:00Z' }),
    put('handle', '-', { gripFront: mm(270) }),
  );
  expect(said(glued)).toEqual([
    ['handle-glued', [{ kind: 'handle-length', what: 'gripFront', lengthM: 0.27, wasM: 0.26 }]],
  ]);
});

/** What was said while the shop's habits changed under the build, an hour a gesture from midnight. */
function saidInShop({ log, state }: ReturnType<typeof logOf>, shop: Operation[]) {
  const now = applyOperations(emptyDocument('s', 'shop'), shop);
  return workDone(log).map((done) => [
    done.deed,
    changedSince(stateAfter(log, done.upTo, 'build'), done, state, {
      habits: (build, at) => withHabits(build, at === undefined ? now : stateAt(shop, at, 'shop')),
      assign: munkres,
    }),
  ]);
}
function shopLog(...changes: [hour: number, change: Write][]): Operation[] {
  let state = emptyDocument('s', 'shop');
  return changes.flatMap(([hour, change]) => {
    const at = new Date(Date.UTC(2026, 0, 1, hour)).toISOString();
    const made = makeOperations(state, [change], { device: 'd-2', gesture: 'habit', at });
    state = applyOperations(state, made);
    return made;
  });
}
const habit = (key: string, value: FieldValue): Write => ({
  path: [key.split('/')[0], '-', key.split('/')[1]],
  value,
});

test('a habit of the shop that changed after the print is said; one that stood before it is not', () => {
  const build = logOf(blank, print('p', 'wraps'));
  const stood = shopLog([0, habit('wraps/tipWrap', mm(9))]);
  expect(saidInShop(build, stood)).toEqual([['wraps', []]]);
  const changed = shopLog([0, habit('wraps/tipWrap', mm(9))], [2, habit('wraps/tipWrap', mm(5))]);
  expect(saidInShop(build, changed)).toEqual([['wraps', [tipWrap(0.005, 0.009)]]]);
  const own = logOf(blank, put('wraps', '-', { tipWrap: mm(7) }), print('p', 'wraps'));
  expect(saidInShop(own, shopLog([5, habit('wraps/tipWrap', mm(5))]))).toEqual([['wraps', []]]);
});

test('the finish sheet, the glue and the rack hear of the habits they hang on', () => {
  const finish = logOf(blank, print('p', 'finish'));
  expect(saidInShop(finish, shopLog([3, habit('finish/turnFor', { si: 14_400, text: '4 h' })]))).toEqual([
    ['finish', [{ kind: 'value', what: 'turning', now: { lastsS: 14_400 }, was: { lastsS: 21_600 } }]],
  ]);
  const mixed = saidInShop(finish, shopLog([3, habit('finish/partA', 3)]))[0][1];
  expect(mixed).toEqual([
    expect.objectContaining({
      what: 'mix',
      now: expect.objectContaining({ unit: 'ml' }),
      was: expect.objectContaining({ partA: 2.5, partB: 2.5 }),
    }),
  ]);
  const glued = logOf(blank, put('handle', '-', { gripFront: mm(260), gluedAt: '2026-01-01T01:00:00Z' }));
  expect(saidInShop(glued, shopLog([3, habit('handle/arborCount', 4)]))).toEqual([
    [
      'handle-glued',
      [
        {
          kind: 'value',
          what: 'arbors',
          now: { count: 4, widthM: 0.01 },
          was: { count: 3, widthM: 0.01 },
        },
      ],
    ],
  ]);
  const bag = ['slight', 'straight'].flatMap((straightness, index) =>
    put('bag', `b${index}`, { order: index, size: '1', straightness }),
  );
  const rack = logOf(blank, bag, print('p', 'rack'));
  expect(saidInShop(rack, [])).toEqual([['rack', []]]);
  const stricter = saidInShop(rack, shopLog([3, habit('sorting/ofDiameterPercent', 0.5)]));
  expect((stricter[0][1] as Change[])[0]).toMatchObject({
    kind: 'rack-place',
    number: undefined,
    was: expect.any(Number),
  });
});

import { expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { Change } from './operation.ts';
import { readBuild } from './read-build.ts';
import { readFinish } from './read-finish.ts';
import { readWrapChoices } from './read-wraps.ts';
import { withHabits } from './shop-habits.ts';

const documentOf = (kind: 'build' | 'shop', changes: readonly Change[]) => {
  const empty = emptyDocument(kind, kind);
  return applyOperations(
    empty,
    makeOperations(empty, changes, { device: 'd-1', gesture: 'g', at: '2026-01-01T00:00:00Z' }),
  );
};
const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });

test('the build comes before the shop, the shop before common practice', () => {
  const shop = documentOf('shop', [
    { path: ['wraps', '-', 'trimTurns'], value: 6 },
    { path: ['wraps', '-', 'checkWrap'], value: mm(14) },
    { path: ['wraps', '-', 'underwrap'], value: true },
    { path: ['finish', '-', 'partA'], value: 3 },
    { path: ['settings', '-', 'paper'], value: 'a4' },
  ]);
  const build = documentOf('build', [
    { path: ['wraps', '-', 'trimTurns'], value: 3 },
    { path: ['wraps', '-', 'underwrap'], value: false },
  ]);
  const filled = withHabits(build, shop);
  const choices = readWrapChoices(filled);
  expect(choices).toMatchObject({ trimTurns: 3, checkWrapM: 0.014, underwrap: false, lockTurns: 7 });
  expect(readFinish(filled).mix).toMatchObject({ partA: 3, partB: 1 });
  expect(filled.cells.has('settings/-/paper')).toBe(false);
  expect(build.cells.has('finish/-/partA')).toBe(false);
});

test('a value taken back in the build falls back to the shop; without habits the build is the same object', () => {
  const shop = documentOf('shop', [{ path: ['wraps', '-', 'trimTurns'], value: 6 }]);
  const build = documentOf('build', [{ path: ['wraps', '-', 'trimTurns'], value: 3 }]);
  const taken = applyOperations(
    build,
    makeOperations(build, [{ path: ['wraps', '-', 'trimTurns'], value: null }], {
      device: 'd-1',
      gesture: 'g2',
      at: '2026-01-01T00:00:01Z',
    }),
  );
  expect(readWrapChoices(withHabits(taken, shop)).trimTurns).toBe(6);
  expect(withHabits(build, documentOf('shop', []))).toBe(build);
});

test('what a layout is judged by is the shop’s where the build says nothing, and the build’s where it does', () => {
  const shop = documentOf('shop', [
    { path: ['layout', '-', 'limitLineAngle'], value: { si: 0.2, text: '0.2 rad' } },
    { path: ['layout', '-', 'ferruleClear'], value: mm(14) },
    { path: ['layout', '-', 'frictionHighest'], value: 0.4 },
    { path: ['layout', '-', 'intervals'], value: 'free' },
  ]);
  const section: Change[] = [
    { path: ['sections', 's', 'order'], value: 0 },
    { path: ['sections', 's', 'name'], value: 'all' },
    { path: ['sections', 's', 'length'], value: mm(2100) },
  ];
  const choicesOf = (changes: Change[]) =>
    readBuild(withHabits(documentOf('build', [...section, ...changes]), shop)).choices;
  expect(choicesOf([])).toMatchObject({
    limits: { lineAngleRad: 0.2 },
    ferruleClearM: 0.014,
    friction: { highest: 0.4 },
    intervals: 'free',
  });
  expect(choicesOf([{ path: ['layout', '-', 'intervals'], value: 'growing' }])).toMatchObject({
    limits: { lineAngleRad: 0.2 },
    intervals: 'growing',
  });
});

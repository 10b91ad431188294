import { expect, test } from 'vitest';
import { readQuantity } from '../engine/units/read-quantity.ts';
import { commonOrigin, commonPaths, commonValueOf } from './common-practice.ts';
import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import type { DocumentState } from './operation.ts';
import { readFinish } from './read-finish.ts';
import { readSortingRules } from './read-guide-set.ts';
import { readHandleParts } from './read-handle.ts';
import { readSoftWork } from './read-soft-work.ts';
import { readKeeper, readWrapChoices } from './read-wraps.ts';
import { documentSchemas, type FieldValue } from './schema.ts';
import { withHabits } from './shop-habits.ts';
import { findField } from './validate.ts';

const pathOf = (key: string) => [key.split('/')[0], '-', key.split('/')[1]] as const;
const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
/** Fields that are only read together with another. */
const beside: Record<string, [key: string, value: FieldValue]> = {
  'wraps/turnsOver': ['wraps/turnsCounted', 165],
};
const documentOf = (kind: 'build' | 'shop', values: readonly [key: string, value: FieldValue][]) => {
  const empty = emptyDocument(kind, kind);
  const changes = values.map(([key, value]) => ({ path: pathOf(key), value }));
  return applyOperations(
    empty,
    makeOperations(empty, changes, { device: 'd-1', gesture: 'g', at: '2026-01-01T00:00:00Z' }),
  );
};
/** Everything that the steps after the layout read of a build. */
const readAll = (state: DocumentState) => ({
  wraps: readWrapChoices(state),
  finish: readFinish(state),
  handle: readHandleParts(state, 0.26),
  seatLock: state.cells.get('handle/-/seatLock')?.value ?? 'up',
  sorting: readSortingRules(state),
  soft: readSoftWork(state),
  keeper: readKeeper(state, { lengthM: 2.7, gripFrontFromButtM: 0.26 }),
});
const keeper: [string, FieldValue] = ['handle/keeperAhead', mm(20)];

function typed(key: string, text: string): FieldValue {
  const kind = findField('build', pathOf(key));
  if (typeof kind === 'string') throw new Error(kind);
  if (kind.kind === 'number') return Number(text);
  if (kind.kind !== 'quantity') return text;
  const read = readQuantity(text, { dimension: kind.dimension, system: 'mm' });
  if (!read.ok) throw new Error(`${key}: ${text} is no ${kind.dimension}`);
  return { si: read.si, text };
}
/** Another value that the field takes. */
function other(key: string, value: FieldValue): FieldValue {
  const kind = findField('build', pathOf(key));
  if (typeof kind !== 'string' && kind.kind === 'choice') return kind.of.find((one) => one !== value) ?? null;
  if (typeof value === 'number') return key === 'handle/keeperFeet' ? 1 : value + 1;
  return typeof value === 'object' && value ? { ...value, si: value.si * 1.4 } : null;
}

test.each(commonPaths)('%s: what stands in the empty field is what the engine takes', (key) => {
  const value = typed(key, commonValueOf(pathOf(key))?.text ?? '');
  const context = [keeper, ...(beside[key] ? [beside[key]] : [])];
  const empty = readAll(documentOf('build', context));
  const filled = readAll(documentOf('build', [...context, [key, value]]));
  // 67 % is two thirds as a builder writes it.
  const close = (text: string) =>
    JSON.parse(text, (_, it) => (typeof it === 'number' ? Number(it.toPrecision(2)) : it));
  expect(close(JSON.stringify(filled))).toEqual(close(JSON.stringify(empty)));
});

test.each(commonPaths)(
  '%s: the build’s own word stands before the shop’s, the shop’s before common practice',
  (key) => {
    const value = typed(key, commonValueOf(pathOf(key))?.text ?? '');
    const context = [keeper, ...(beside[key] ? [beside[key]] : [])];
    const build = documentOf('build', context);
    const shop = documentOf('shop', key === 'finish/roomC' ? [] : [[key, other(key, value)]]);
    if (key === 'finish/roomC') return expect(findField('shop', pathOf(key))).toBeTypeOf('string');
    const byShop = readAll(withHabits(build, shop));
    expect(byShop).not.toEqual(readAll(build));
    const own = documentOf('build', [...context, [key, value]]);
    expect(readAll(withHabits(own, shop))).toEqual(readAll(own));
    return undefined;
  },
);

test('every default lies in the range that stands beside it', () => {
  const ranged = commonPaths.flatMap((key) => {
    const { text, range } = commonValueOf(pathOf(key)) ?? { text: '' };
    const found = /^([\d.]+) to ([\d.]+)/.exec(range ?? '');
    return found
      ? [{ key, value: Number.parseFloat(text), least: Number(found[1]), most: Number(found[2]) }]
      : [];
  });
  expect(ranged.length).toBeGreaterThan(25);
  expect(ranged.filter(({ value, least, most }) => value < least || value > most)).toEqual([]);
  expect(commonOrigin({ text: '2', range: '1 to 3' })).toBe('common practice, 1 to 3');
  expect(commonOrigin({ text: '6', ownChoice: true })).toBe('our own choice, no source');
});

test('no habit of the shop is without a word on what holds where it is empty', () => {
  const asked = ['product', 'densityA', 'densityB', 'underwrap'];
  const missing = ['wraps', 'finish', 'handle', 'sorting'].flatMap((collection) =>
    Object.keys(documentSchemas.shop[collection].fields)
      .filter((field) => !asked.includes(field) && !/(Colour|Name)$/.test(field))
      .filter((field) => !commonValueOf([collection, '-', field]))
      .map((field) => `${collection}/${field}`),
  );
  expect(missing).toEqual([]);
});

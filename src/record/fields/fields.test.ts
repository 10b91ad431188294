import { describe, expect, test } from 'vitest';
import { applyOperations, emptyDocument, makeOperations } from '../document.ts';
import type { DocumentState, Path } from '../operation.ts';
import { readBuild } from '../read-build.ts';
import { readFinish } from '../read-finish.ts';
import { readSortingRules } from '../read-guide-set.ts';
import { readHandleParts } from '../read-handle.ts';
import { readSoftWork } from '../read-soft-work.ts';
import { readKeeper, readWrapChoices } from '../read-wraps.ts';
import { buildSchema, type DocumentKind, documentSchemas, type Field, type FieldValue } from '../schema.ts';
import { withHabits } from '../shop-habits.ts';
import { findField, validateValue } from '../validate.ts';

type Place = { kind: DocumentKind; collection: string; name: string; field: Field };
const places = Object.entries(documentSchemas).flatMap(([kind, schema]) =>
  Object.entries(schema).flatMap(([collection, { fields }]) =>
    Object.entries(fields).map(
      ([name, field]): Place => ({ kind: kind as DocumentKind, collection, name, field }),
    ),
  ),
);
const where = ({ kind, collection, name }: Place) => `${kind}: ${collection}/${name}`;

describe('every field of the record', () => {
  test('has a name in the bench’s words, begun small, and none of a programmer’s', () => {
    const odd = places.filter(
      ({ field: { name } }) => !/^[a-z“±]/.test(name) || /[a-z][A-Z]|_|Percent|undefined/.test(name),
    );
    expect(odd.map(where)).toEqual([]);
    expect(places.length).toBeGreaterThan(400);
  });

  test('shares its name with no other of its thing', () => {
    const twice = places.filter((one) =>
      places.some(
        (two) =>
          two !== one &&
          two.kind === one.kind &&
          two.collection === one.collection &&
          two.field.name === one.field.name,
      ),
    );
    expect(twice.map(where)).toEqual([]);
  });

  test('holds its own default, its example and what is likely of it', () => {
    const outside = places.filter(({ field }) => {
      const { usual, example, likely, origin } = field;
      if (field.kind === 'choice') return usual !== undefined && !field.of.includes(String(usual));
      if (field.kind !== 'number' && field.kind !== 'quantity') return false;
      const told = [usual, example, ...(likely ?? []), ...(origin?.range ?? [])];
      return told.some((value) => typeof value === 'number' && !(value >= field.min && value <= field.max));
    });
    expect(outside.map(where)).toEqual([]);
  });

  test('takes its default from within the range that stands beside it', () => {
    const ranged = places.filter(({ field }) => field.origin?.range && typeof field.usual === 'number');
    expect(ranged.length).toBeGreaterThan(50);
    const outside = ranged.filter(({ field: { usual, origin } }) => {
      const [low, high] = origin?.range ?? [0, 0];
      return Number(usual) < low || Number(usual) > high;
    });
    expect(outside.map(where)).toEqual([]);
  });

  test('says, where a number holds, whose figure it is', () => {
    const silent = places.filter(
      ({ field: { habit, usual, origin, kind } }) =>
        habit && typeof usual === 'number' && !origin && kind !== 'choice',
    );
    // Both ends of what friction may be, and percentages that nothing is added by, are nobody's habit.
    expect([...new Set(silent.map(({ name }) => name))].sort()).toEqual([
      'frictionHighest',
      'frictionLowest',
      'overheadPercent',
      'taxPercent',
    ]);
  });
});

/** What the page and the engine read of a build. */
const readAll = (state: DocumentState) => ({
  wraps: readWrapChoices(state),
  finish: readFinish(state),
  handle: readHandleParts(state, 0.26),
  seatLock: state.cells.get('handle/-/seatLock')?.value ?? 'up',
  sorting: readSortingRules(state),
  soft: readSoftWork(state),
  keeper: readKeeper(state, { lengthM: 2.7, gripFrontFromButtM: 0.26 }),
  build: readBuild(state),
});
const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
const context: [string, FieldValue][] = [
  ['sections/s/order', 0],
  ['sections/s/name', 'tip'],
  ['sections/s/length', mm(1400)],
  ['sections/s/joint', 'spigot'],
  ['sections/t/order', 1],
  ['sections/t/name', 'butt'],
  ['sections/t/length', mm(1400)],
  ['setups/u/clampFromTip', mm(2500)],
  ['setups/u/kind', 'clamp'],
  ['tests/w/setup', 'u'],
  ['handle/-/keeperAhead', mm(20)],
];
/** Fields that are only read together with another. */
const beside: Record<string, [key: string, value: FieldValue]> = {
  'wraps/turnsOver': ['wraps/turnsCounted', 165],
  'layout/spiralBy': ['layout/guidesSide', 'spiral'],
  'layout/spiralOnTop': ['layout/guidesSide', 'spiral'],
  'layout/spiralOver': ['layout/guidesSide', 'spiral'],
};
const pathOf = (key: string): Path => {
  const [collection, row, field] = key.split('/');
  return [collection, row, field];
};
const documentOf = (kind: 'build' | 'shop', values: readonly [key: string, value: FieldValue][]) => {
  const empty = emptyDocument(kind, kind);
  const changes = values.map(([key, value]) => ({ path: pathOf(key), value }));
  const by = { device: 'd-1', gesture: 'g', at: '2026-01-01T00:00:00Z' };
  return applyOperations(empty, makeOperations(empty, changes, by));
};
const rowOf: Record<string, string> = { sections: 's', setups: 'u', tests: 'w' };

/** A field whose default the engine takes; the shop's rates and what no number hangs on are read by the page. */
const readHere = ['wraps', 'finish', 'handle', 'sorting', 'layout', 'sections', 'setups', 'tests'];
const held = places.filter(
  ({ kind, collection, field }) =>
    kind === 'build' && readHere.includes(collection) && field.usual !== undefined,
);
const asStored = (field: Field, value: string | number): FieldValue =>
  field.kind === 'quantity' ? { si: Number(value), text: 't' } : value;
function other(field: Field, value: string | number): FieldValue {
  if (field.kind === 'choice') return field.of.find((one) => one !== value) ?? null;
  if (typeof value === 'string') return '#123456';
  const more = field.kind === 'quantity' ? value * 1.4 + 0.0001 : value + 1;
  const most = field.kind === 'quantity' || field.kind === 'number' ? field.max : more;
  return asStored(field, more <= most ? more : value - 1);
}
/** The order of words and the path's id aside. */
const plain = (read: unknown) =>
  JSON.parse(JSON.stringify(read, (key, it) => (key === 'assumed' ? undefined : it)));

describe.each(held.map((place) => [`${place.collection}/${place.name}`, place] as const))(
  '%s',
  (key, place) => {
    const { collection, name, field } = place;
    const at = `${collection}/${rowOf[collection] ?? '-'}/${name}`;
    const usual = field.usual as string | number;
    const around = [
      ...context,
      ...(beside[key] ? [[beside[key][0].replace('/', '/-/'), beside[key][1]] as [string, FieldValue]] : []),
    ].filter(([one]) => one !== at);

    test('what is declared to hold while it is empty is what the engine takes, and another value is not', () => {
      const value = asStored(field, usual);
      expect(validateValue('build', pathOf(at), value)).toEqual([]);
      const empty = plain(readAll(documentOf('build', around)));
      expect(plain(readAll(documentOf('build', [...around, [at, value]])))).toEqual(empty);
      if (unread.includes(key)) return;
      expect(plain(readAll(documentOf('build', [...around, [at, other(field, usual)]])))).not.toEqual(empty);
    });

    test('the build’s own word stands before the shop’s, the shop’s before what is declared', () => {
      if (!field.habit) return expect(findField('shop', pathOf(at))).toBeTypeOf('string');
      if (unread.includes(key)) return undefined;
      const shop = documentOf('shop', [[at, other(field, usual)]]);
      const build = documentOf('build', around);
      expect(plain(readAll(withHabits(build, shop)))).not.toEqual(plain(readAll(build)));
      const own = documentOf('build', [...around, [at, asStored(field, usual)]]);
      expect(plain(readAll(withHabits(own, shop)))).toEqual(plain(readAll(own)));
      return undefined;
    });
  },
);
/** Another value needs more than an empty build to be seen: a list, a weight that hangs, a second picture. */
const unread = ['layout/startKind', 'layout/startFrom', 'tests/hungFromTip'];

test('the shop holds the habits of its builds and nothing else of them', () => {
  for (const collection of ['wraps', 'finish', 'handle', 'sorting', 'layout']) {
    const habits = Object.entries(buildSchema[collection].fields).filter(([, { habit }]) => habit);
    expect(documentSchemas.shop[collection].fields).toEqual(Object.fromEntries(habits));
    expect(habits.length).toBeGreaterThan(5);
  }
});

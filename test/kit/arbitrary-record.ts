import fc from 'fast-check';
import { applyOperations, emptyDocument, makeOperations } from '../../src/record/document.ts';
import type { Change, Operation, Path } from '../../src/record/operation.ts';
import { buildSchema, type FieldKind, type FieldValue } from '../../src/record/schema.ts';

/** Text as people and accidents make it: accents, emoji, right to left, quotes, tags, newlines. */
const text = (most: number) =>
  fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: Math.min(20, Math.floor(most / 20)) }),
    fc.constantFrom('9 ft 5 wt', 'Ø ½″', 'שלום', '<script>', '"', '\n', '🎣', 'é'),
  );

/** A value that fits a field. */
export function fieldValue(kind: FieldKind): fc.Arbitrary<FieldValue> {
  switch (kind.kind) {
    case 'text':
      return text(kind.maxLength);
    case 'flag':
      return fc.boolean();
    case 'choice':
      return fc.constantFrom(...kind.of);
    case 'number':
      return kind.integer
        ? fc.integer({ min: kind.min, max: kind.max })
        : fc.double({ min: kind.min, max: kind.max, noNaN: true });
    case 'quantity':
      return fc.record({
        si: fc.double({ min: kind.min, max: kind.max, noNaN: true }),
        text: text(120),
      });
    case 'row':
      return rowId;
    case 'attachment':
      return fc.stringMatching(/^[0-9a-f]{64}$/);
    case 'instant':
      return instant;
  }
}

const rowId = fc.constantFrom('a', 'b', 'c7', 'x_1', 'B-2');
const instant = fc.integer({ min: 0, max: 4e12 }).map((ms) => new Date(ms).toISOString());

const fields = Object.entries(buildSchema).flatMap(([collection, schema]) =>
  Object.entries(schema.fields).map(([field, kind]) => ({ collection, single: schema.single, field, kind })),
);

/** A change of any field of a build; small sets of rows, so that changes meet. */
export const change: fc.Arbitrary<Change> = fc
  .constantFrom(...fields)
  .chain(({ collection, single, field, kind }) =>
    fc.record({
      path: (single ? fc.constant('-') : rowId).map((row): Path => [collection, row, field]),
      value: fc.option(fieldValue(kind), { freq: 6 }),
    }),
  );

/** What several devices wrote, each seeing only some of what the others did; in any order of arrival. */
export const history: fc.Arbitrary<Operation[]> = fc
  .array(
    fc.record({
      device: fc.constantFrom('d1-a', 'd1-b', 'd2-a', 'd3-a'),
      changes: fc.array(change, { minLength: 1, maxLength: 4 }),
      seen: fc.nat(40),
      at: instant,
    }),
    { maxLength: 15 },
  )
  .map((gestures) => {
    const log: Operation[] = [];
    for (const [index, { device, changes, seen, at }] of gestures.entries()) {
      const own = log.filter((operation) => operation.device === device);
      const state = applyOperations(emptyDocument('b', 'build'), [...log.slice(0, seen), ...own]);
      log.push(...makeOperations(state, changes, { device, gesture: `g.${index}`, at }));
    }
    return log;
  });

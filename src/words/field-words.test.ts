import { expect, test } from 'vitest';
import { type DocumentSchema, documentSchemas } from '../record/schema.ts';
import { fieldWords } from './field-words.ts';

const places = Object.values(documentSchemas as Record<string, DocumentSchema>).flatMap((schema) =>
  Object.entries(schema).flatMap(([collection, { fields }]) =>
    Object.keys(fields).map((field) => [collection, '-', field] as const),
  ),
);

test('no field of any document is told by a programmer’s name', () => {
  const odd = places
    .map((path) => ({ path, words: fieldWords(path) }))
    .filter(({ words }) => /[a-z][A-Z]|Percent|_/.test(`${words.thing} ${words.field}`));
  expect(odd).toEqual([]);
});

test('what is measured in something says in what', () => {
  expect(fieldWords(['blank', '-', 'strainStopPercent'])).toEqual({
    thing: 'Blank',
    field: 'strain that stops',
    unit: '%',
  });
  const bare = places.filter((path) => /Percent$|C$/.test(path[2]) && fieldWords(path).unit === undefined);
  expect(bare).toEqual([]);
});

test('a name that is no field is taken apart, never looked up in what every object has', () => {
  expect(fieldWords(['constructor', '-', 'toString'])).toEqual({
    thing: 'Constructor',
    field: 'to string',
    unit: undefined,
  });
});

import { expect, test } from 'vitest';
import { figuresWithUnits } from './figures-with-units.ts';
import { shopWriter, type Writer } from './writer.ts';

const kept = (text: string) => figuresWithUnits(text).filter((_, index) => index % 2 === 1);

test('a figure is cut out with its unit, a bare number and a size are not', () => {
  expect(figuresWithUnits('move guide 7 12 3/16 in up')).toEqual(['move guide 7 ', '12 3/16 in', ' up']);
  expect(kept('Outdoors keep 30 m (100 ft) from it, below 100 °F, ±1⁄64 in')).toEqual([
    '30 m',
    '100 ft',
    '100 °F',
    '±1⁄64 in',
  ]);
  expect(kept('bend added by the line 0.133 of 0.072 1/m; 250 kB')).toEqual(['0.072 1/m', '250 kB']);
  expect(kept('4 of size 1/0, guide 8 at most, 12 guides, 3 snake 1')).toEqual([]);
});

test('nothing is lost by the cut', () => {
  const text = 'From 5⁄8 in to 1 3⁄4 in, 2.5 + 2.5 ml, 12 % of 400 g.';
  expect(figuresWithUnits(text).join('')).toBe(text);
});

test.each([
  ['inch', shopWriter({ system: 'inch' })],
  ['mm', shopWriter({ system: 'mm', weighsIn: 'oz' })],
])('every quantity that a writer in %s writes is kept together', (_, writer) => {
  const { units, ...writes } = writer;
  for (const [name, write] of Object.entries(writes) as [keyof Writer, (value: number) => string][]) {
    const text = write(0.7431);
    if (text.includes(' ')) expect([name, kept(`by ${text}.`)]).toEqual([name, [text]]);
  }
});

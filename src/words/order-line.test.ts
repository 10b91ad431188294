import { expect, test } from 'vitest';
import { orderedInWords } from './order-line.ts';
import { shopWriter } from './writer.ts';

const inch = shopWriter({ system: 'inch' });
const mm = shopWriter({ system: 'mm' });

test('a dealer is asked in the shop’s units', () => {
  const thread = { part: 'thread', name: 'green', lengthM: 31.2 } as const;
  expect(orderedInWords(thread, inch)).toBe('Thread green, 34 yd needed');
  expect(orderedInWords(thread, mm)).toBe('Thread green, 31 m needed');
  expect(orderedInWords({ part: 'tip-top', size64: 3.5, half: 'below' }, mm)).toBe(
    'Tip-top, tube 3.5/64 in, half a size below',
  );
  expect(orderedInWords({ part: 'tip-top' }, mm)).toMatch(/measure the tip first/);
  expect(orderedInWords({ part: 'guide', kind: 'snake', size: '2' }, mm)).toBe('Snake guide 2');
  expect(orderedInWords({ part: 'guide', kind: 'stripping', size: '12' }, mm)).toBe('Stripping guide 12');
  expect(orderedInWords({ part: 'blank', name: undefined }, mm)).toBe('Blank');
});

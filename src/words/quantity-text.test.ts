import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inWords } from '../../test/support/in-words.ts';
import { readQuantity } from '../engine/units/read-quantity.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import { showQuantity } from './quantity-text.ts';

const typedIn = (system: UnitSystem, text: string) => {
  const read = readQuantity(text, { dimension: 'length', system });
  if (!read.ok) throw new Error(inWords(read.finding));
  return { si: read.si, text };
};

describe('a stored quantity in the shop of today', () => {
  it('shows the text as typed and the same in the other unit', () => {
    const stored = typedIn('inch', '4 1/2 in');
    expect(showQuantity(stored, 'length', { system: 'inch' })).toEqual({
      text: '4 1/2 in',
      echo: '= 114.3 mm',
    });
    expect(showQuantity(stored, 'length', { system: 'mm' }).text).toBe('4 1/2 in');
  });

  it('names the unit of a bare number once the shop has changed its system', () => {
    expect(showQuantity(typedIn('mm', '114'), 'length', { system: 'inch' }).text).toBe('114 mm');
    expect(showQuantity(typedIn('inch', '4.5'), 'length', { system: 'mm' }).text).toBe('4.5 in');
  });

  it('names the unit of a bare mass once the shop weighs in grams again', () => {
    const stored = { si: 5 * 0.028349523125, text: '5' };
    expect(showQuantity(stored, 'mass', { system: 'inch', weighsIn: 'oz' }).text).toBe('5');
    expect(showQuantity(stored, 'mass', { system: 'inch' }).text).toBe('141.75 g');
  });

  it('says nothing under the field where it would only repeat it', () => {
    expect(showQuantity(typedIn('mm', '114 mm'), 'length', { system: 'mm' }).echo).toBe('');
  });

  it('whatever is shown, in either system, reads back as the stored value', () => {
    const typed = fc.tuple(
      fc.constantFrom<UnitSystem>('inch', 'mm'),
      fc.oneof(
        fc.integer({ min: 0, max: 4000 }).map((tenths) => `${tenths / 10}`),
        fc
          .tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 63 }))
          .map(([a, b]) => `${a} ${b}/64`),
        fc.integer({ min: 0, max: 4000 }).map((mm) => `${mm} mm`),
      ),
    );
    fc.assert(
      fc.property(typed, fc.constantFrom<UnitSystem>('inch', 'mm'), ([before, text], now) => {
        const stored = Object.freeze(typedIn(before, text));
        const shown = showQuantity(stored, 'length', { system: now }).text;
        const read = readQuantity(shown, { dimension: 'length', system: now });
        expect(read.ok && read.si).toBe(stored.si);
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});

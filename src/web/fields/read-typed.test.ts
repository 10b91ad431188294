import { describe, expect, it } from 'vitest';
import type { QuantityValue } from '../../record/schema.ts';
import { findField, validateValue } from '../../record/validate.ts';
import type { Reader } from '../../words/field-text.ts';
import { shopWriter } from '../../words/writer.ts';
import { readTyped } from './read-typed.ts';

const readerOf = (units: Reader['units'], code = 'USD'): Reader => ({
  units,
  writer: shopWriter(units),
  currency: { code, digits: 2, symbols: [{ USD: '$', EUR: '€' }[code] ?? code] },
});
const inch = readerOf({ system: 'inch' });
const mm = readerOf({ system: 'mm' }, 'EUR');

const fieldAt = (collection: string, name: string) => {
  const field = findField('build', [
    collection,
    ['handle', 'finish', 'blank', 'layout'].includes(collection) ? '-' : 'r',
    name,
  ]);
  if (typeof field === 'string') throw new Error(field);
  return field;
};
const drop = fieldAt('readings', 'drop');
const mass = fieldAt('sections', 'mass');
const typed = (text: string, [collection, name]: [string, string], reader: Reader) => {
  const read = readTyped(text, fieldAt(collection, name), reader);
  return read.ok ? read.value : read.trouble;
};
const si = (value: unknown) => (value as QuantityValue).si;

describe('what is typed into a quantity field', () => {
  it('is kept as SI value and text as typed', () => {
    const read = readTyped(' 4 1/2 in ', drop, mm);
    expect(read).toMatchObject({ ok: true, value: { text: '4 1/2 in' }, understood: '4 1/2 in = 114.3 mm' });
    expect(read.ok && si(read.value)).toBeCloseTo(0.1143, 12);
  });
  it('a stiffness in twist of nought, and a line that may not even touch, are asked for what can stand there', () => {
    expect(typed('0', ['blank', 'twistShare'], inch)).toMatch(/0\.01 to 1/);
    expect(typed('0', ['layout', 'limitIntoBlank'], mm)).toMatch(/0 mm is outside .* 0\.1 mm to 100 mm/);
  });
  it('nothing typed empties the field', () => {
    expect(readTyped('  ', drop, inch)).toMatchObject({ ok: true, value: null });
  });
  it('what is accepted the record takes, what the record would refuse is refused in the shop’s units', () => {
    for (const text of [
      '9.9 m',
      '-9 m',
      '10 m',
      '10.1 m',
      '33 ft',
      '0',
      '394 in',
      '51 kg',
      '49 kg',
      '2 oz',
    ]) {
      for (const [kind, path] of [
        [drop, ['readings', 'r', 'drop']],
        [mass, ['sections', 's', 'mass']],
      ] as const) {
        const read = readTyped(text, kind, inch);
        if (read.ok) expect(validateValue('build', path, read.value)).toEqual([]);
        else expect(read.trouble).toContain(text);
      }
    }
    expect(readTyped('60 kg', mass, inch)).toMatchObject({
      trouble: expect.stringMatching(/outside .* 50000 g/),
    });
  });
  it('a unit of another kind is named', () => {
    expect(readTyped('12 in', mass, inch)).toMatchObject({
      ok: false,
      trouble: expect.stringMatching(/unit of length/),
    });
  });
});

describe('what is typed into a temperature, a density or a share', () => {
  it('is read in the unit written, or the shop’s own, and kept in the record’s', () => {
    const room: [string, string] = ['finish', 'roomC'];
    for (const [text, reader, celsius] of [
      ['72 F', inch, 200 / 9],
      ['72', inch, 200 / 9],
      ['22 C', inch, 22],
      ['22', mm, 22],
      ['22°', mm, 22],
      ['72 °F', mm, 200 / 9],
      ['-4 °F', mm, -20],
      ['22,5 °C', mm, 22.5],
    ] as const)
      expect(typed(text, room, reader), text).toBeCloseTo(celsius, 12);
    expect(typed('18 F', ['finish', 'halvesPerC'], mm)).toBeCloseTo(10, 12);
    expect(typed('1.1', ['finish', 'densityA'], inch)).toBe(1.1);
    expect(typed('9 lb/gal', ['finish', 'densityA'], inch)).toBeCloseTo(1.0784, 4);
    expect(typed('20 %', ['finish', 'ratioErrorPercent'], inch)).toBe(20);
  });
  it('is refused by what it is', () => {
    expect(typed('warm', ['finish', 'roomC'], inch)).toMatch(
      /"warm" cannot be read as a temperature.*72 F or 22 C/,
    );
    expect(typed('200 F', ['finish', 'roomC'], inch)).toMatch(/outside what stands here, -4 °F to 140 °F/);
    expect(typed('12 mm', ['finish', 'roomC'], inch)).toMatch(/mm is a unit of length/);
  });
});

describe('a bare number that two units could mean', () => {
  const ask = (text: string, at: [string, string], reader: Reader) => typed(text, at, reader);
  it('is asked about where only the other fits', () => {
    expect(ask('5', ['handle', 'reelMass'], inch)).toBe('5 g or 5 oz? Write the unit with it.');
    expect(ask('72', ['finish', 'roomC'], mm)).toBe('72 °C or 72 °F? Write the unit with it.');
    expect(ask('6', ['finish', 'turnFor'], mm)).toBe('6 min or 6 h? Write the unit with it.');
    expect(ask('1.7', ['diameters', 'outside'], inch)).toBe('1.7 in or 1.7 mm? Write the unit with it.');
    expect(ask('.067', ['diameters', 'outside'], mm)).toBe('.067 mm or .067 in? Write the unit with it.');
    expect(ask('8', ['handle', 'reamShort'], inch)).toBe('8 in or 8 mm? Write the unit with it.');
  });
  it('is taken where it fits, or where the unit is written, or where nothing fits better', () => {
    expect(si(ask('120', ['handle', 'reelMass'], inch))).toBeCloseTo(0.12, 12);
    expect(si(ask('5 g', ['handle', 'reelMass'], inch))).toBeCloseTo(0.005, 12);
    expect(si(ask('5', ['handle', 'reelMass'], readerOf({ system: 'inch', weighsIn: 'oz' })))).toBeCloseTo(
      0.141747615625,
      12,
    );
    expect(si(ask('.34', ['diameters', 'outside'], inch))).toBeCloseTo(0.008636, 12);
    expect(si(ask('25', ['diameters', 'outside'], mm))).toBeCloseTo(0.025, 12);
    expect(si(ask('3/8', ['handle', 'reamShort'], inch))).toBeCloseTo(0.009525, 12);
    expect(si(ask('0', ['handle', 'reamShort'], inch))).toBe(0);
  });
});

describe('an amount of money', () => {
  const price = (text: string, reader: Reader) => typed(text, ['quoteLines', 'unitPrice'], reader);
  it('is taken with the currency’s sign or code, before or behind', () => {
    for (const text of ['189.50', '$189.50', '189.50 $', 'USD 189.50', '189.50 usd', '$ 189.5'])
      expect(price(text, inch), text).toBe(18_950);
    for (const text of ['189,50 €', '€189.50', 'EUR 189,50', '189,5'])
      expect(price(text, mm), text).toBe(18_950);
  });
  it('of another currency is refused by name', () => {
    expect(price('£5', inch)).toBe('“£5” is no amount in USD. Write it as 12.50.');
    expect(price('$5', mm)).toMatch(/no amount in EUR/);
  });
});

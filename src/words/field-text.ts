/** What a field is called, and what stands pale in it while it is empty, in the reader's units. */

import type { Currency } from '../engine/quote/money.ts';
import { trimZeros } from '../engine/units/format-decimal.ts';
import { formatGrams, formatOunces } from '../engine/units/format-quantity.ts';
import type { BareUnits } from '../engine/units/unit-table.ts';
import type { Field, FieldValue, NumberKind } from '../record/fields/field.ts';
import { capital } from './capital.ts';
import { writeMoney } from './intl.ts';
import { showQuantity } from './quantity-text.ts';
import type { Writer } from './writer.ts';

/** Everything that one reader's figures depend on. */
export interface Reader {
  units: BareUnits;
  writer: Writer;
  currency: Currency;
}

/** "Balance point": the name as it stands over a field. */
export function labelOf({ name }: Field): string {
  return capital(name);
}

/** What stands in the list for one of a choice's values. */
export function choiceText(field: Field, value: string): string {
  return field.kind === 'choice' ? (field.names[value] ?? value) : value;
}

/** An SI value, a number or a word of this field, rounded as it is read. */
export function valueText(field: Field, value: number | string, reader: Reader): string {
  if (typeof value === 'string') return choiceText(field, value);
  const { writer } = reader;
  if (field.kind === 'number')
    return field.holds === 'temperature' || field.holds === 'warmer'
      ? writer[field.holds](value)
      : numberText(field, value, reader);
  if (field.kind !== 'quantity') return String(value);
  if (field.dimension === 'mass' && value < 0.001) return lightText(value, reader.units);
  return field.dimension === 'length'
    ? writer[field.fineness ?? 'length'](value)
    : writer[field.dimension](value);
}

/** A guide weighs less than a gram. */
function lightText(massKg: number, { weighsIn }: BareUnits): string {
  return weighsIn === 'oz' ? formatOunces(massKg, 4) : formatGrams(massKg, 2);
}

/** What a habit of the shop says, or a build's own value. */
export function storedText(field: Field, value: Exclude<FieldValue, null>, reader: Reader): string {
  if (typeof value === 'object')
    return field.kind === 'quantity' ? showQuantity(value, field.dimension, reader.units).text : value.text;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return valueText(field, value, reader);
}

/** A number of the record as it is written into its field: to the last digit that was typed. */
export function numberText({ holds, unit }: NumberKind, value: number, { units, currency }: Reader): string {
  const fahrenheit = (units.temperatureIn ?? (units.system === 'inch' ? 'F' : 'C')) === 'F';
  const degrees = (celsius: number, zero: number) =>
    fahrenheit ? `${trimZeros(celsius * 1.8 + zero, 1)} °F` : `${trimZeros(celsius, 1)} °C`;
  switch (holds) {
    case 'temperature':
      return degrees(value, 32);
    case 'warmer':
      return degrees(value, 0);
    case 'volume':
      return `${value} ml`;
    case 'density':
      return `${value} g/ml`;
    case 'money':
      return writeMoney(value, currency);
    case undefined:
      return unit ? `${value} ${unit}` : `${value}`;
  }
}

/** What is assumed while it is empty, or an example of what may be written. */
export function paleText(field: Field, reader: Reader): string | undefined {
  const { usual, example, empty } = field;
  if (usual !== undefined)
    return withoutUnit(
      field,
      typeof usual === 'number' ? rounded(field, usual, reader) : valueText(field, usual, reader),
    );
  if (example !== undefined) return `such as ${valueText(field, example, reader)}`;
  return empty;
}

/** `typical, 3⁄32 to 1⁄4 in`: where that comes from, and how far others go. */
export function originText(field: Field, reader: Reader): string | undefined {
  if (!field.origin) return undefined;
  const { by, note } = field.origin;
  return [by === 'us' ? 'our choice' : 'typical', rangeText(field, reader), note].filter(Boolean).join(', ');
}

/** `3⁄32 to 1⁄4 in`; undefined where the trade's texts give none. */
export function rangeText(field: Field, reader: Reader): string | undefined {
  const range = field.origin?.range;
  if (!range) return undefined;
  const [low, high] = range.map((end) => valueText(field, end, reader));
  const unit = /[^\d]+$/.exec(high)?.[0] ?? '';
  return `${unit !== '' && low.endsWith(unit) ? low.slice(0, -unit.length) : low} to ${high}`;
}

export function hintText({ hint }: Field, writer: Writer): string | undefined {
  return typeof hint === 'function' ? hint(writer) : hint;
}

/** Two thirds are 67 % as a builder writes it. */
function rounded(field: Field, usual: number, reader: Reader): string {
  return valueText(
    field,
    field.kind === 'number' ? Number(trimZeros(usual, usual >= 10 ? 0 : 3)) : usual,
    reader,
  );
}

/** What stands behind the field is not said in it again. */
function withoutUnit(field: Field, text: string): string {
  const unit = field.kind === 'number' && !field.holds && field.unit ? ` ${field.unit}` : '';
  return unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length) : text;
}

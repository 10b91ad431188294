import { plainMoney, readMoney } from '../../engine/quote/money.ts';
import { readQuantity } from '../../engine/units/read-quantity.ts';
import type { Dimension } from '../../engine/units/unit-table.ts';
import type { NumberKind } from '../../record/fields/field.ts';
import type { Field, FieldValue } from '../../record/schema.ts';
import { type Reader, valueText } from '../../words/field-text.ts';
import { writeMoney } from '../../words/intl.ts';
import { sentenceOf } from '../../words/sentence.ts';

export type Typed = { ok: true; value: FieldValue; understood: string } | { ok: false; trouble: string };

/** What a person typed into a field, as it will be stored; an empty text clears the field. */
export function readTyped(typed: string, field: Field, reader: Reader): Typed {
  const text = typed.trim();
  if (text === '') return { ok: true, value: null, understood: '' };
  if (field.kind === 'quantity') return readMeasured(text, field, field.dimension, reader);
  if (field.kind !== 'number') return { ok: true, value: text, understood: '' };
  if (field.holds === 'money') return readAmount(text, reader);
  if (field.holds) return readMeasured(text, field, field.holds, reader);
  return readNumber(text, field);
}

function readMeasured(
  text: string,
  field: Extract<Field, { kind: 'quantity' | 'number' }>,
  dimension: Dimension,
  reader: Reader,
): Typed {
  const read = readQuantity(text, { ...reader.units, dimension });
  if (!read.ok) return { ok: false, trouble: sentenceOf(read.finding, reader.writer) };
  const understood = read.inGrains ? `${read.understood}; write g where grams are meant` : read.understood;
  const kept = asKept(read.si, dimension);
  const question = askedBack(text, field, dimension, reader);
  if (question) return { ok: false, trouble: question };
  if (kept < field.min || kept > field.max) {
    const [low, high] = [field.min, field.max].map((limit) => valueText(field, limit, reader));
    const trouble = `${understood} is outside what stands here, ${low} to ${high}. Check the unit and the digits.`;
    return { ok: false, trouble };
  }
  return { ok: true, value: field.kind === 'quantity' ? { si: read.si, text } : kept, understood };
}

/** In the unit of the record's plain numbers, °C, ml and g/ml; SI for everything else. */
function asKept(si: number, dimension: Dimension): number {
  const scale = { volume: 1e6, density: 1e-3 }[dimension as 'volume' | 'density'];
  return scale === undefined ? si : Number((si * scale).toPrecision(12));
}

/** Units that a bare number is mistaken in. */
const rivals: Partial<Record<Dimension, readonly string[]>> = {
  length: ['in', 'mm'],
  mass: ['g', 'oz'],
  duration: ['min', 'h', 'd'],
  temperature: ['°F', '°C'],
};

/** A bare number that fits badly in the shop's unit and well in another is asked about: `5` of a reel, in grams. */
function askedBack(text: string, field: Field, dimension: Dimension, reader: Reader): string | undefined {
  const likely = likelyOf(field);
  if (!likely || !/^[\d\s.,/⁄]+$/.test(text)) return undefined;
  const reading = (written: string) => {
    const read = readQuantity(written, { ...reader.units, dimension });
    return read.ok ? asKept(read.si, dimension) : Number.NaN;
  };
  const fits = (value: number) => value >= likely[0] && value <= likely[1];
  const bare = reading(text);
  if (fits(bare) || bare === 0) return undefined;
  const others = (rivals[dimension] ?? []).filter((unit) => fits(reading(`${text} ${unit}`)));
  const own = (rivals[dimension] ?? []).find((unit) => reading(`${text} ${unit}`) === bare);
  if (others.length === 0 || !own) return undefined;
  return `${[own, ...others].map((unit) => `${text} ${unit}`).join(' or ')}? Write the unit with it.`;
}

/** What is declared, or four times as far as the trade's range either way. */
function likelyOf({ likely, origin }: Field): readonly [number, number] | undefined {
  if (likely) return likely;
  return origin?.range && [origin.range[0] / 4, origin.range[1] * 4];
}

function readAmount(text: string, { currency }: Reader): Typed {
  const value = readMoney(text, currency);
  if (value !== undefined) return { ok: true, value, understood: writeMoney(value, currency) };
  const trouble = `“${text}” is no amount in ${currency.code}. Write it as ${plainMoney(12_50, currency)}.`;
  return { ok: false, trouble };
}

function readNumber(text: string, { unit, min, max, integer }: NumberKind): Typed {
  const bare = unit && text.endsWith(unit) ? text.slice(0, -unit.length).trim() : text;
  const value = Number(bare.replace(',', '.'));
  const fits = bare !== '' && Number.isFinite(value) && value >= min && value <= max;
  if (fits && (!integer || Number.isInteger(value))) return { ok: true, value, understood: '' };
  const what = integer ? 'a whole number' : 'a number';
  return { ok: false, trouble: `"${text}" is not ${what} from ${min} to ${max}. Write it like ${min}.` };
}

import { formatInches } from '../../engine/units/format-inches.ts';
import { formatDegrees, formatGrams, formatMm } from '../../engine/units/format-quantity.ts';
import { readQuantity } from '../../engine/units/read-quantity.ts';
import type { Dimension, UnitSystem } from '../../engine/units/unit-table.ts';
import type { FieldKind, QuantityValue } from '../../record/schema.ts';
import { sentenceOf } from '../../words/sentence.ts';
import { shopWriter } from '../../words/writer.ts';

export type TypedQuantity =
  | { ok: true; value: QuantityValue | null; understood: string }
  | { ok: false; trouble: string };

type QuantityKind = Extract<FieldKind, { kind: 'quantity' }>;

/** What a person typed into a quantity field, as it will be stored; an empty text clears the field. */
export function readTyped(typed: string, kind: QuantityKind, system: UnitSystem): TypedQuantity {
  const text = typed.trim();
  if (text === '') return { ok: true, value: null, understood: '' };
  const read = readQuantity(text, { dimension: kind.dimension, system });
  if (!read.ok) return { ok: false, trouble: sentenceOf(read.finding, shopWriter({ system })) };
  if (read.si < kind.min || read.si > kind.max) {
    const [low, high] = [kind.min, kind.max].map((limit) => showLimit(limit, kind.dimension, system));
    const trouble = `${read.understood} is outside what stands here, ${low} to ${high}. Check the unit and the digits.`;
    return { ok: false, trouble };
  }
  return { ok: true, value: { si: read.si, text }, understood: read.understood };
}

function showLimit(si: number, dimension: Dimension, system: UnitSystem): string {
  switch (dimension) {
    case 'length':
      return system === 'inch' ? formatInches(si, { denominator: 1 }).text : formatMm(si, 0);
    case 'mass':
      return formatGrams(si, 0);
    case 'angle':
      return formatDegrees(si, 0);
    case 'duration':
      return `${si / 60} min`;
  }
}

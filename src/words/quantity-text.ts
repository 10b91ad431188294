import { formatDegrees, formatGrams, formatLength, formatOunces } from '../engine/units/format-quantity.ts';
import { readQuantity } from '../engine/units/read-quantity.ts';
import type { BareUnits, UnitSystem } from '../engine/units/unit-table.ts';
import type { QuantityKind } from '../record/fields/field.ts';
import type { QuantityValue } from '../record/schema.ts';

type Dimension = QuantityKind['dimension'];

/** What a field shows of a stored value, and what it says under it. */
export interface ShownQuantity {
  /** As typed; with its unit added where the shop's system would now read a bare number differently. */
  text: string;
  /** `= 114.3 mm`; empty where it would only repeat the text. */
  echo: string;
}

const bareSymbol: Record<UnitSystem, string> = { inch: 'in', mm: 'mm' };
const otherSystem: Record<UnitSystem, UnitSystem> = { inch: 'mm', mm: 'inch' };

/**
 * The stored value in the shop's system of today. The stored value itself is never touched: `114` typed in a
 * millimetre shop is shown as `114 mm` in an inch shop, since it still means 114 mm.
 */
export function showQuantity(stored: QuantityValue, dimension: Dimension, units: BareUnits): ShownQuantity {
  const text = unambiguousText(stored, dimension, units);
  const read = readQuantity(text, { ...units, dimension });
  return { text, echo: read.ok && read.si !== 0 ? conversionOf(read.understood) : '' };
}

/** `= 114.3 mm`: only the conversion, since the text itself stands in the field. */
function conversionOf(understood: string): string {
  const equals = understood.indexOf('=');
  return equals < 0 ? '' : understood.slice(equals);
}

/** What was understood, unless it says no more than what stands in the field. */
export function echoOf(text: string, understood: string): string {
  return plain(understood) === plain(text) ? '' : understood;
}

function unambiguousText(stored: QuantityValue, dimension: Dimension, units: BareUnits): string {
  if (means(stored, stored.text, dimension, units)) return stored.text;
  const named = `${stored.text} ${bareSymbol[otherSystem[units.system]]}`;
  if (dimension === 'length' && means(stored, named, dimension, units)) return named;
  return formatExactly(stored.si, dimension, units);
}

function means(stored: QuantityValue, text: string, dimension: Dimension, units: BareUnits): boolean {
  const read = readQuantity(text, { ...units, dimension });
  return read.ok && Math.abs(read.si - stored.si) <= 1e-12 * Math.max(1, Math.abs(stored.si));
}

/** For a value without a usable text, such as one an import brought. */
function formatExactly(si: number, dimension: Dimension, { system, weighsIn }: BareUnits): string {
  switch (dimension) {
    case 'length':
      return formatLength(si, { system: 'mm', decimals: system === 'mm' ? 1 : 2 });
    case 'mass':
      return weighsIn === 'oz' ? formatOunces(si) : formatGrams(si);
    case 'angle':
      return formatDegrees(si);
    case 'duration':
      return `${Math.round(si / 60)} min`;
  }
}

/** A bare number means what the shop's system says; in a sentence it says so itself. */
export function withUnit(text: string, dimension: Dimension, units: BareUnits): string {
  if (!/^[\d\s./,-]+$/.test(text)) return text;
  const read = readQuantity(text, { ...units, dimension });
  return read.ok ? read.understood.replace(/ *=.*$/, '') : text;
}

/** Without spaces and trailing zeros, to compare what is written with what was understood. */
function plain(text: string): string {
  return text.replace(/\s/g, '').toLowerCase();
}

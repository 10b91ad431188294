import { trimZeros } from './format-decimal.ts';
import { formatOunces } from './format-quantity.ts';
import type { Part, ReadOptions } from './quantity-parts.ts';
import { bareUnit } from './unit-table.ts';

/**
 * What was understood, for the line under a field: the text in plain form, and the same in the unit the
 * bench would check it by.
 */
export function showConverted(parts: readonly Part[], si: number, options: ReadOptions): string {
  const written = `${si < 0 ? '-' : ''}${parts.map(showPart).join(' ')}`;
  const other = convert(parts, si, options);
  return other === undefined ? written : `${written} = ${other}`;
}

function showPart({ numeral, unit }: Part): string {
  return unit.symbol === '°' || unit.symbol === "'"
    ? `${numeral}${unit.symbol}`
    : `${numeral} ${unit.symbol}`;
}

function convert(parts: readonly Part[], si: number, options: ReadOptions): string | undefined {
  const symbols = parts.map((part) => part.unit.symbol);
  const only = symbols.length === 1 ? symbols[0] : undefined;
  if (options.dimension === 'length') return convertLength(symbols, si, options);
  if (options.dimension === 'mass') {
    if (only === bareUnit('mass', options)) return undefined;
    if (options.weighsIn === 'oz' && only !== 'grains') return formatOunces(si);
    return `${trimZeros(si * 1000, only === 'grains' ? 3 : 2)} g`;
  }
  if (options.dimension === 'angle') {
    return only === '°' ? undefined : `${trimZeros((si * 180) / Math.PI, 2)}°`;
  }
  if (options.dimension === 'duration')
    return only === undefined ? `${trimZeros(si / 60, 2)} min` : undefined;
  return convertOther(only, si, options);
}

/** A temperature, a volume or a density that is not in the unit the shop has it in. */
function convertOther(only: string | undefined, si: number, options: ReadOptions): string | undefined {
  const { dimension } = options;
  const own = bareUnit(dimension, options);
  if (only === own) return undefined;
  const fahrenheit = own === '°F';
  const value = {
    temperature: fahrenheit ? si * 1.8 + 32 : si,
    warmer: fahrenheit ? si * 1.8 : si,
    volume: 1e6 * si,
    density: si / 1000,
  }[dimension as 'temperature' | 'warmer' | 'volume' | 'density'];
  return `${trimZeros(value, dimension === 'density' ? 3 : 1)} ${own}`;
}

function convertLength(symbols: string[], si: number, options: ReadOptions): string | undefined {
  const imperial = symbols.some((symbol) => symbol === 'in' || symbol === 'ft');
  if (imperial) return `${trimZeros(si * 1000, 2)} mm`;
  if (options.system === 'inch') return `${trimZeros(si / 0.0254, 3)} in`;
  return symbols.length === 1 && symbols[0] === 'mm' ? undefined : `${trimZeros(si * 1000, 2)} mm`;
}

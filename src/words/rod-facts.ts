import type { AssembledBlank } from '../engine/bench/assemble.ts';
import { formatLength } from '../engine/units/format-quantity.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';

/** `9 ft, 4 sections, line 5`; what is not known is left out. */
/** On the shelf and at the head of a sheet, beside a title that is the old build's; empty for a rod of its own. */
export function originInWords({ againFrom, copyOf }: { againFrom?: string; copyOf?: string }): string {
  if (copyOf) return 'a copy';
  return againFrom ? 'the same again' : '';
}

export function rodFacts(blank: AssembledBlank | undefined, lineWeight: string, system: UnitSystem): string {
  const length =
    blank &&
    formatLength(blank.lengthM, { system, denominator: 8, decimals: 0, feet: true }).replaceAll('⁄', '/');
  const sections = blank?.sections.length;
  return [
    length,
    sections && `${sections} ${sections === 1 ? 'section' : 'sections'}`,
    lineWeight && `line ${lineWeight}`,
  ]
    .filter(Boolean)
    .join(', ');
}

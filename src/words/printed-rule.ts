import { formatInches } from '../engine/units/format-inches.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';

/** What a steel rule shows, and what a strip may be off by over its rule before it is printed again. */
const readsTo: Record<UnitSystem, string> = {
  inch: formatInches(0.0254 / 64, { denominator: 64 }).text,
  mm: '0.5 mm',
};

/** After a print, before its strips are used. */
export function printedRuleWords(system: UnitSystem): string {
  return `Measure all four rules on the print, 100 mm and 4 in, across and along. Each right to ${readsTo[system]} over its whole length? Then use the strips as they are.`;
}

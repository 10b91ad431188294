import type { Rational } from './rational.ts';
import type { BareUnits, Dimension, Unit } from './unit-table.ts';

/** What a bare number means is the shop's; see `bareUnit`. */
export interface ReadOptions extends BareUnits {
  dimension: Dimension;
  /** Where the field stands; goes into the finding. */
  path?: string;
}

/** One number with its unit; several make `4 ft 7 1/2 in`. */
export interface Part {
  /** The number as written back: `7 1/2`. */
  numeral: string;
  value: Rational;
  unit: Unit;
}

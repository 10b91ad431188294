import type { Rational } from './rational.ts';
import type { Dimension, Unit, UnitSystem } from './unit-table.ts';

export interface ReadOptions {
  dimension: Dimension;
  /** Decides a bare number; see `bareUnit`. */
  system: UnitSystem;
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

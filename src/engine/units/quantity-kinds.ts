import type { Dimension } from './unit-table.ts';

/** Why a typed text is no quantity, with the part of it that stops the reading. */
export interface Unread {
  why:
    | 'long'
    | 'empty'
    | 'no-number'
    | 'not-a-number'
    | 'no-unit'
    | 'other-unit'
    | 'unknown-unit'
    | 'order'
    | 'zero-below'
    | 'fraction-over-one'
    | 'comma-and-point'
    | 'two-readings';
  part?: string;
  /** The unit before, the kind of quantity that the unit belongs to, or the other reading. */
  other?: string;
}
export interface QuantityKinds {
  'units/not-read': { typed: string; dimension: Dimension } & Unread;
}

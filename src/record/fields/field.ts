/**
 * What a field of the record is. It is declared once, in this folder: what may stand in it, what it is called, what
 * holds while it is empty and who says so. Schemas, labels, placeholders, History, habits and checks follow from it.
 */
import type { RodKind } from '../../engine/kinds/rod-kinds.ts';

export interface QuantityValue {
  si: number;
  text: string;
}
export type FieldValue = string | number | boolean | QuantityValue | null;

/** What a plain number of the record counts, where that is more than a number: °C, K, ml, g/ml, a currency's smallest unit. */
export type Holds = 'temperature' | 'warmer' | 'volume' | 'density' | 'money';

export type NumberKind = {
  kind: 'number';
  min: number;
  max: number;
  integer?: boolean;
  holds?: Holds;
  /** Written behind it: `%`, `×`, `days`. */
  unit?: string;
};
/** SI: m, kg, rad, s; bounds are sanity limits of the record, tighter ones belong to the bench checks. */
export type QuantityKind = {
  kind: 'quantity';
  dimension: 'length' | 'mass' | 'angle' | 'duration';
  min: number;
  max: number;
};
/** Its options by the words that the record keeps, each as the reader is told it. */
export type ChoiceKind = { kind: 'choice'; of: readonly string[]; names: Readonly<Record<string, string>> };

/**
 * `colour`: as #rrggbb. `names`: picked from a list, kept by its id; files of earlier versions keep the name, or any
 * other text.
 */
export type TextKind = {
  kind: 'text';
  maxLength: number;
  colour?: boolean;
  names?: Readonly<Record<string, string>>;
};

export type FieldKind =
  | TextKind
  | { kind: 'flag' }
  | Omit<ChoiceKind, 'names'>
  | NumberKind
  | QuantityKind
  | { kind: 'row'; collection: string }
  /** SHA-256 in lower-case hex of a stored attachment. */
  | { kind: 'attachment' }
  /** ISO 8601 instant in UTC; `day` is a day of the calendar, kept as its noon. */
  | { kind: 'instant'; day?: boolean };

/** What a length is read with, and so how finely it is written. */
export type Fineness = 'length' | 'fine' | 'mark' | 'calliper' | 'run';

/** Writes a figure of a hint in the reader's units; a `Writer` of src/words does. */
export interface Figures {
  length(lengthM: number): string;
  fine(lengthM: number): string;
  mass(massKg: number): string;
}

/** Who says what holds while a field is empty: the trade's texts (common practice, no source), or Fairbend alone. */
export interface Origin {
  by: 'trade' | 'us';
  /** As far as others go, in the field's own SI or number. */
  range?: readonly [low: number, high: number];
  note?: string;
}

export interface FieldWords {
  /** The one name of it, begun small: label, History, Undo and checks use it. */
  name: string;
  hint?: string | ((say: Figures) => string);
  /** What holds while it is empty: SI, a plain number, or the word of a choice. */
  usual?: number | string;
  origin?: Origin;
  /** Shown pale as `such as …`: SI of a quantity, or words. */
  example?: number | string;
  /** Shown pale where nothing can be said to hold. */
  empty?: string;
  /** What may be expected of it; a bare number outside of it that another unit would bring inside is asked about. */
  likely?: readonly [low: number, high: number];
  fineness?: Fineness;
  /** A build's own word stands before the shop's. */
  habit?: boolean;
  /** Asked of these rods only; left out: of all. */
  rods?: readonly RodKind[];
  /** A choice of many: folded up as a list. */
  folded?: boolean;
  /** Several lines of text. */
  lines?: number;
}
export type Field = (Exclude<FieldKind, { kind: 'choice' }> | ChoiceKind) & FieldWords;
export type Fields = Readonly<Record<string, Field>>;

export interface CollectionSchema {
  /** What one row of it is called, or the single one. */
  thing: string;
  single: boolean;
  fields: Fields;
}
export type DocumentSchema = Readonly<Record<string, CollectionSchema>>;

import type { DocumentKind, FieldValue } from './schema.ts';

/** Where a value stands: collection, row ('-' in a collection with one row), field. */
export type Path = readonly [collection: string, row: string, field: string];

/**
 * One change of one value. Appended, never altered. The value of a path is that of the operation with the
 * greatest (clock, device): the later wins, the earlier stays in the history.
 */
export interface Operation {
  /** Unique: `${device}.${clock}.${index}`; sending it twice does nothing the second time. */
  id: string;
  device: string;
  /** Lamport clock: greater than every clock the device had seen when it wrote. */
  clock: number;
  /** Operations of one gesture share it; undo takes them back together. */
  gesture: string;
  path: Path;
  old: FieldValue;
  value: FieldValue;
  /** Wall clock of the device, for people; never for ordering. */
  at: string;
}

/** A document as its operations leave it: path joined by '/' to the winning operation's value and stamp. */
export interface Cell {
  value: FieldValue;
  clock: number;
  device: string;
}
export interface DocumentState {
  id: string;
  kind: DocumentKind;
  cells: Map<string, Cell>;
}

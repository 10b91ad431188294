import type { DocumentKind, FieldValue } from './schema.ts';

/** What the record does not take: where, and why, in one sentence with the remedy. */
export interface Objection {
  path: string;
  message: string;
}

/** Where a value stands: collection, row ('-' in a collection with one row), field. */
export type Path = readonly [collection: string, row: string, field: string];

/**
 * One change of one value. Appended, never altered. The value of a path is that of the operation with the
 * greatest (clock, device): the later wins, the earlier stays in the history.
 */
export interface Operation {
  /** Unique: `${device}.${clock}.${index}`; sending it twice does nothing the second time. */
  id: string;
  /**
   * Who wrote: `${device}-${session}`. The session is new whenever a document is opened, so two tabs of one
   * browser never make the same id; undo looks at the part before the dash, so it survives a reload.
   */
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

/** An operation as the server keeps it: `seq` counts the operations of one document in the order of arrival. */
export interface StoredOperation extends Operation {
  seq: number;
  receivedAt: string;
}

/** What a person changed, before it becomes an operation. */
export interface Change {
  path: Path;
  value: FieldValue;
}

/** The changes that give a row these values. */
export function rowChanges(collection: string, row: string, fields: Record<string, FieldValue>): Change[] {
  return Object.entries(fields).map(([field, value]) => ({ path: [collection, row, field], value }));
}

/** A document as its operations leave it: path joined by '/' to the winning operation's value and stamp. */
export interface Cell {
  value: FieldValue;
  clock: number;
  device: string;
  /** The winning operation. */
  id: string;
}
export interface DocumentState {
  id: string;
  kind: DocumentKind;
  cells: ReadonlyMap<string, Cell>;
  /** Greatest clock seen, of winning and losing operations alike. */
  clock: number;
}

export function pathKey(path: Path): string {
  return path.join('/');
}

/** The operations of each path, paths in the order of their first. */
export function byPath<O extends Operation>(operations: Iterable<O>): O[][] {
  const paths = new Map<string, O[]>();
  for (const operation of operations) {
    const key = pathKey(operation.path);
    const written = paths.get(key);
    if (written) written.push(operation);
    else paths.set(key, [operation]);
  }
  return [...paths.values()];
}

/** The path of a key made by `pathKey`. */
export function pathOf(key: string): Path {
  const [collection, row, field] = key.split('/');
  return [collection, row, field];
}

/** The part of `device` that stays the same over reloads and tabs. */
export function deviceFamily(device: string): string {
  const dash = device.indexOf('-');
  return dash < 0 ? device : device.slice(0, dash);
}

/** Order of operations: clock, then device, then id; negative when `a` is the earlier. */
export function compareStamps(
  a: { clock: number; device: string; id: string },
  b: { clock: number; device: string; id: string },
): number {
  return a.clock - b.clock || compareText(a.device, b.device) || compareText(a.id, b.id);
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

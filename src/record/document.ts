import {
  type Cell,
  type Change,
  compareStamps,
  type DocumentState,
  type Operation,
  type Path,
  pathKey,
} from './operation.ts';
import type { DocumentKind, FieldValue } from './schema.ts';

/** One row of a collection as it stands; a field never written, or cleared, is absent. */
export interface Row {
  id: string;
  fields: Readonly<Record<string, FieldValue>>;
}

export function emptyDocument(id: string, kind: DocumentKind): DocumentState {
  return { id, kind, cells: new Map(), clock: 0 };
}

/**
 * The state after `operations`. The last writer by (clock, device) wins, so any order, and any repetition, of
 * the same operations gives the same state. The given state is not altered; nothing new returns it as it is.
 */
export function applyOperations(state: DocumentState, operations: Iterable<Operation>): DocumentState {
  let cells: Map<string, Cell> | undefined;
  let clock = state.clock;
  const touched = new Set<string>();
  for (const operation of operations) {
    clock = Math.max(clock, operation.clock);
    const key = pathKey(operation.path);
    const standing = (cells ?? state.cells).get(key);
    if (standing && compareStamps(operation, standing) <= 0) continue;
    cells ??= new Map(state.cells);
    cells.set(key, {
      value: operation.value,
      clock: operation.clock,
      device: operation.device,
      id: operation.id,
    });
    touched.add(operation.path[0]);
  }
  if (!cells && clock === state.clock) return state;
  const next: DocumentState = { ...state, cells: cells ?? state.cells, clock };
  keepUntouchedRows(state, next, touched);
  return next;
}

/** The operations that make `changes` on `state`; one that changes nothing makes none. */
export function makeOperations(
  state: DocumentState,
  changes: readonly Change[],
  by: { device: string; gesture: string; at: string },
): Operation[] {
  const last = new Map(changes.map((change) => [pathKey(change.path), change]));
  const clock = state.clock + 1;
  return [...last.values()]
    .map((change) => ({ ...change, old: valueAt(state, change.path), value: withoutMinusZero(change.value) }))
    .filter((change) => !sameValue(change.old, change.value))
    .map(({ path, old, value }, index) => ({
      id: `${by.device}.${clock}.${index}`,
      device: by.device,
      clock,
      gesture: by.gesture,
      path,
      old,
      value,
      at: by.at,
    }));
}

/** The value standing at a path; null where none was written. */
export function valueAt(state: DocumentState, path: Path): FieldValue {
  return state.cells.get(pathKey(path))?.value ?? null;
}

/** The only row of a collection marked `single`. */
export function singleRow(state: DocumentState, collection: string): Row {
  return allRows(state, collection).find((row) => row.id === '-') ?? { id: '-', fields: {} };
}

/**
 * The rows of a collection by `order`, then id; rows put away (`gone`) and rows without any value are left out.
 * The same state, and a later one with this collection untouched, gives the same array.
 */
export function rows(state: DocumentState, collection: string): readonly Row[] {
  const views = viewsOf(state);
  let view = views.get(collection);
  if (!view) {
    view = allRows(state, collection).filter((row) => row.fields.gone !== true);
    views.set(collection, view);
  }
  return view;
}

/** As `rows`, with those put away. */
export function allRows(state: DocumentState, collection: string): Row[] {
  const found = new Map<string, Record<string, FieldValue>>();
  const prefix = `${collection}/`;
  for (const [key, cell] of state.cells) {
    if (cell.value === null || !key.startsWith(prefix)) continue;
    const [, id, field] = key.split('/');
    const fields = found.get(id) ?? {};
    fields[field] = cell.value;
    found.set(id, fields);
  }
  return [...found].map(([id, fields]) => ({ id, fields })).sort(compareRows);
}

export function sameValue(a: FieldValue, b: FieldValue): boolean {
  if (a === b) return true;
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return false;
  return a.si === b.si && a.text === b.text;
}

/** Rows without an order come last. */
function compareRows(a: Row, b: Row): number {
  const orderA = typeof a.fields.order === 'number' ? a.fields.order : Number.MAX_VALUE;
  const orderB = typeof b.fields.order === 'number' ? b.fields.order : Number.MAX_VALUE;
  return orderA - orderB || (a.id < b.id ? -1 : 1);
}

/** JSON has no -0; storing it would make a value that does not come back equal. */
function withoutMinusZero(value: FieldValue): FieldValue {
  if (typeof value === 'number') return value + 0;
  if (value !== null && typeof value === 'object') return { ...value, si: value.si + 0 };
  return value;
}

type Views = Map<string, readonly Row[]>;
/** Views already made of a state; only a memory of `rows`, which a state never outlives. */
const viewsByState = new WeakMap<DocumentState, Views>();

function viewsOf(state: DocumentState): Views {
  let views = viewsByState.get(state);
  if (!views) {
    views = new Map();
    viewsByState.set(state, views);
  }
  return views;
}

function keepUntouchedRows(from: DocumentState, to: DocumentState, touched: ReadonlySet<string>): void {
  const kept = [...(viewsByState.get(from) ?? [])].filter(([collection]) => !touched.has(collection));
  viewsByState.set(to, new Map(kept));
}

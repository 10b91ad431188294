import { sameValue } from '../../record/document.ts';
import {
  type Cell,
  compareStamps,
  type DocumentState,
  deviceFamily,
  type Operation,
  type Path,
  pathKey,
} from '../../record/operation.ts';
import type { FieldValue } from '../../record/schema.ts';

/** Two devices changed the same field without knowing of each other; `kept` stands, `lost` is in the history. */
export interface Conflict {
  path: Path;
  kept: FieldValue;
  lost: FieldValue;
  /** True where this device's value is the one that stands. */
  oursKept: boolean;
  at: string;
}

/** Where `arriving` operations of other devices meet values of this one that they had not seen; one a field. */
export function conflictsWith(
  document: DocumentState,
  arriving: readonly Operation[],
  device: string,
): Conflict[] {
  const family = deviceFamily(device);
  const foreign = arriving.filter((operation) => deviceFamily(operation.device) !== family);
  return runsOf(foreign).flatMap(({ key, old, latest }) => {
    const cell = document.cells.get(key);
    if (!cell || deviceFamily(cell.device) !== family) return [];
    if (sameValue(old, cell.value) || sameValue(latest.value, cell.value)) return [];
    return [conflict(latest, cell, compareStamps(cell, latest) > 0)];
  });
}

/** Where changes that an earlier page of this device left unsent meet a value of another that they had not seen. */
export function unsentConflicts(document: DocumentState, unsent: readonly Operation[]): Conflict[] {
  return runsOf(unsent).flatMap(({ key, old, latest }) => {
    const cell = document.cells.get(key);
    if (!cell || deviceFamily(cell.device) === deviceFamily(latest.device)) return [];
    if (sameValue(old, cell.value) || sameValue(latest.value, cell.value)) return [];
    return [conflict(latest, cell, compareStamps(latest, cell) > 0)];
  });
}

interface Run {
  key: string;
  /** What stood before the first of them. */
  old: FieldValue;
  latest: Operation;
}

/** Several changes of one field by one writer are one change to whoever meets it. */
function runsOf(operations: readonly Operation[]): Run[] {
  const runs = new Map<string, Run>();
  for (const operation of operations.toSorted(compareStamps)) {
    const key = pathKey(operation.path);
    const run = runs.get(key);
    if (run) run.latest = operation;
    else runs.set(key, { key, old: operation.old, latest: operation });
  }
  return [...runs.values()];
}

function conflict(operation: Operation, cell: Cell, oursKept: boolean): Conflict {
  const operationKept = compareStamps(operation, cell) > 0;
  const [kept, lost] = operationKept ? [operation.value, cell.value] : [cell.value, operation.value];
  return { path: operation.path, kept, lost, oursKept, at: operation.at };
}

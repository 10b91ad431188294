import { sameValue } from '../../record/document.ts';
import {
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

/** Where `arriving` operations of other devices meet values of this one that they had not seen. */
export function conflictsWith(
  document: DocumentState,
  arriving: readonly Operation[],
  device: string,
): Conflict[] {
  const family = deviceFamily(device);
  return arriving.flatMap((operation) => {
    const cell = document.cells.get(pathKey(operation.path));
    if (!cell || deviceFamily(operation.device) === family || deviceFamily(cell.device) !== family) return [];
    if (sameValue(operation.old, cell.value) || sameValue(operation.value, cell.value)) return [];
    const oursKept = compareStamps(cell, operation) > 0;
    const [kept, lost] = oursKept ? [cell.value, operation.value] : [operation.value, cell.value];
    return [{ path: operation.path, kept, lost, oursKept, at: operation.at }];
  });
}

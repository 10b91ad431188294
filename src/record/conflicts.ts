import { sameValue } from './document.ts';
import {
  byPath,
  compareStamps,
  type DocumentState,
  deviceFamily,
  type Operation,
  type Path,
  pathKey,
} from './operation.ts';
import type { FieldValue } from './schema.ts';

/**
 * Two devices changed one field without knowing of each other, and nobody has chosen yet. The record holds one of the
 * two meanwhile; which one says nothing about who wrote last. Read off the log, so it outlives every page.
 */
export interface Conflict {
  path: Path;
  /** The one the document shows. */
  standing: Operation;
  other: Operation;
}

/** Id of the gesture by which somebody settles a conflict. */
export const chooseDeed = 'chooseValue';

/** All that are open, in the order of their fields' first changes. */
export function openConflicts(log: readonly Operation[]): Conflict[] {
  return byPath(log).flatMap((written) => conflictAmong(written) ?? []);
}

/** @param written all operations of one path, in any order */
function conflictAmong(written: readonly Operation[]): Conflict | undefined {
  const families = new Set(written.map(({ device }) => deviceFamily(device)));
  if (families.size < 2) return undefined;
  const sorted = written.toSorted(compareStamps);
  const standing = sorted.at(-1)!;
  if (standing.gesture.startsWith(chooseDeed)) return undefined;
  const family = deviceFamily(standing.device);
  const before = sorted.findLastIndex(({ device }) => deviceFamily(device) !== family);
  const other = sorted[before];
  // What its writer saw when this device began to write is what stood there before, or it did not know of it.
  const seen = sorted[before + 1].old;
  if (!other || sameValue(seen, other.value) || sameValue(other.value, standing.value)) return undefined;
  return { path: standing.path, standing, other };
}

/** Settles a conflict, also for the value that stands already: from now on it was chosen. */
export function chosenOperation(
  state: DocumentState,
  path: Path,
  value: FieldValue,
  by: { device: string; gesture: string; at: string },
): Operation {
  const clock = state.clock + 1;
  const old = state.cells.get(pathKey(path))?.value ?? null;
  return { id: `${by.device}.${clock}.0`, ...by, clock, path, old, value };
}

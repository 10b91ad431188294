import type { Conflict } from '../../record/conflicts.ts';
import type { DocumentState, Path } from '../../record/operation.ts';
import type { SaveStatus } from './sender.ts';

/** One change by the builder; undo takes back all that was written under it. */
export interface Gesture {
  id: string;
}

/** All a screen needs; a new object whenever any of it changed, the same one otherwise. */
export interface StoreSnapshot {
  document: DocumentState;
  save: SaveStatus;
  /** The gesture that undo would take back, or null. */
  undo: string | null;
  redo: string | null;
  conflicts: readonly Conflict[];
  /** What of the document the server cannot read as stored any more; undefined where all is good. */
  damage: string | undefined;
  /** How many states of before were fetched: see `DocumentPast.stateAfter`. */
  pastStates: number;
}

/** What undo or redo did: `held` are fields another device has changed since, which were left as they are. */
export interface UndoOutcome {
  done: boolean;
  gesture: string;
  held: Path[];
}

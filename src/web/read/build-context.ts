import { createContext, useContext } from 'react';
import type { Conflict } from '../../record/conflicts.ts';
import type { Row } from '../../record/document.ts';
import type { Change, DocumentState, Objection } from '../../record/operation.ts';
import type { DeedId } from '../../words/deeds.ts';
import type { DocumentStore } from '../store/document-store.ts';
import type { SaveStatus } from '../store/sender.ts';
import type { Gesture } from '../store/store-snapshot.ts';

/** The build on the table: its values, and how to change them. A new object whenever any of it changed. */
export interface Build {
  id: string;
  title: string;
  /** The quiet line under the title. */
  subtitle: string;
  demo: boolean;
  document: DocumentState;
  save: SaveStatus;
  /** What of it cannot be read as stored any more. */
  damage: string | undefined;
  /** Fields two devices changed without knowing of each other, until somebody chooses. */
  conflicts: readonly Conflict[];
  undoLabel: string | null;
  redoLabel: string | null;
  /** Rows of a collection in order, those put away left out; the same array while they stay the same. */
  rows(collection: string): readonly Row[];
  single(collection: string): Row;
  newRowId(): string;
  /** A gesture to write under several times, such as a drag. */
  gesture(deed: DeedId): Gesture;
  /** Writes at once; with findings nothing was written. */
  write(deed: DeedId | Gesture, changes: readonly Change[]): Objection[];
  undo(): void;
  redo(): void;
  dropRefused(): void;
  retrySaving(): void;
  store: DocumentStore;
}

export const BuildContext = createContext<Build | undefined>(undefined);

export function useBuild(): Build {
  const build = useContext(BuildContext);
  if (!build) throw new Error('useBuild needs a BuildProvider above it');
  return build;
}

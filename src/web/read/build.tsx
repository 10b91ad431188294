import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { type Row, rows, singleRow } from '../../record/document.ts';
import type { Change, DocumentState, Finding } from '../../record/operation.ts';
import { useSay } from '../shell/messages.tsx';
import { Page } from '../shell/page.tsx';
import type { DocumentStore, Gesture } from '../store/document-store.ts';
import type { SaveStatus } from '../store/sender.ts';
import { BenchProvider } from './bench.tsx';
import { useOpenStore, useSnapshot } from './open-store.ts';
import { useSayConflicts } from './say-conflicts.ts';
import { flagOf, textOf } from './values.ts';

/** The build on the table: its values, and how to change them. A new object whenever any of it changed. */
export interface Build {
  id: string;
  title: string;
  /** The quiet line under the title. */
  subtitle: string;
  demo: boolean;
  document: DocumentState;
  save: SaveStatus;
  undoLabel: string | null;
  redoLabel: string | null;
  /** Rows of a collection in order, those put away left out; the same array while they stay the same. */
  rows(collection: string): readonly Row[];
  single(collection: string): Row;
  newRowId(): string;
  /** A gesture to write under several times, such as a drag. */
  gesture(label: string): Gesture;
  /** Writes at once; with findings nothing was written. */
  write(gesture: string | Gesture, changes: readonly Change[]): Finding[];
  undo(): void;
  redo(): void;
  dropRefused(): void;
  retrySaving(): void;
  store: DocumentStore;
}

const BuildContext = createContext<Build | undefined>(undefined);

export function useBuild(): Build {
  const build = useContext(BuildContext);
  if (!build) throw new Error('useBuild needs a BuildProvider above it');
  return build;
}

/** Opens a build and gives it to everything below. */
export function BuildProvider({ id, children }: { id: string; children: ReactNode }) {
  const opening = useOpenStore(id);
  if (opening.kind === 'open') return <OpenBuild store={opening.store}>{children}</OpenBuild>;
  if (opening.kind === 'opening') return <Page title="Opening the build …">{null}</Page>;
  return (
    <Page title="This build cannot be opened">
      <p role="alert">{opening.reason}. Nothing was changed. Try again, or pick another from the shelf.</p>
      <button type="button" onClick={opening.retry}>
        Try again
      </button>
    </Page>
  );
}

function OpenBuild({ store, children }: { store: DocumentStore; children: ReactNode }) {
  const snapshot = useSnapshot(store);
  const say = useSay();
  useSayConflicts(snapshot, say);
  const build = useMemo<Build>(() => {
    const { document } = snapshot;
    const about = singleRow(document, 'about');
    const demo = flagOf(about, 'demo');
    const carryOut = (verb: 'undo' | 'redo') => () => {
      const { label, held } = store[verb]();
      const word = verb === 'undo' ? 'Undone' : 'Done again';
      say(held.length > 0 ? `${word}: ${label}. ${heldWords(held.length)}` : `${word}: ${label}`);
    };
    return {
      id: document.id,
      title: textOf(about, 'title') ?? 'Untitled build',
      subtitle: subtitleOf(about, demo),
      demo,
      document,
      save: snapshot.save,
      undoLabel: snapshot.undo,
      redoLabel: snapshot.redo,
      rows: (collection) => rows(document, collection),
      single: (collection) => singleRow(document, collection),
      newRowId: () => store.newRowId(),
      gesture: (label) => store.gesture(label),
      write: (gesture, changes) => store.write(gesture, changes),
      undo: carryOut('undo'),
      redo: carryOut('redo'),
      dropRefused: () => store.dropRefused(),
      retrySaving: () => store.retryNow(),
      store,
    };
  }, [snapshot, store, say]);
  return (
    <BuildContext value={build}>
      <BenchProvider>{children}</BenchProvider>
    </BuildContext>
  );
}

function subtitleOf(about: Row, demo: boolean): string {
  const words = [demo ? 'demo, an invented blank' : '', textOf(about, 'customer') ?? ''];
  return words.filter((word) => word !== '').join(' · ');
}

function heldWords(count: number): string {
  const fields = count === 1 ? 'One field was' : `${count} fields were`;
  return `${fields} left alone: another device has changed it since.`;
}

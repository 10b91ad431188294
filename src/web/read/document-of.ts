import { useMemo } from 'react';
import { type Row, rows, singleRow } from '../../record/document.ts';
import { deedText } from '../../words/deeds.ts';
import { originInWords } from '../../words/rod-facts.ts';
import type { DocumentStore } from '../store/document-store.ts';
import type { Build } from './build-context.ts';
import { useSay } from './messages.tsx';
import { useSnapshot } from './open-store.ts';
import { flagOf, textOf } from './values.ts';

/** An open document, a build or a ticket, as the screen uses it. */
export function useDocumentOf(store: DocumentStore): Build {
  const snapshot = useSnapshot(store);
  const say = useSay();
  return useMemo<Build>(() => {
    const { document } = snapshot;
    const about = singleRow(document, 'about');
    const demo = flagOf(about, 'demo');
    const labelOf = (gesture: string | null) => gesture && deedText(gesture, document.kind);
    const carryOut = (verb: 'undo' | 'redo') => () => {
      const { gesture, held } = store[verb]();
      const label = deedText(gesture, document.kind);
      const word = verb === 'undo' ? 'Undone' : 'Done again';
      if (held.length > 0) say(`${word}: ${label}. ${heldWords(held.length)}`);
      else say(`${word}: ${label}`, 'passing');
    };
    return {
      id: document.id,
      title: textOf(about, 'title') ?? (document.kind === 'ticket' ? 'A repair' : 'Untitled build'),
      subtitle: subtitleOf(about, demo),
      demo,
      document,
      save: snapshot.save,
      damage: snapshot.damage,
      undoLabel: labelOf(snapshot.undo),
      redoLabel: labelOf(snapshot.redo),
      conflicts: snapshot.conflicts,
      rows: (collection) => rows(document, collection),
      single: (collection) => singleRow(document, collection),
      newRowId: () => store.newRowId(),
      gesture: (deed) => store.gesture(deed),
      write: (deed, changes) => store.write(deed, changes),
      undo: carryOut('undo'),
      redo: carryOut('redo'),
      dropRefused: () => store.dropRefused(),
      retrySaving: () => store.retryNow(),
      store,
    };
  }, [snapshot, store, say]);
}

function subtitleOf(about: Row, demo: boolean): string {
  const origin = originInWords({ againFrom: textOf(about, 'againFrom'), copyOf: textOf(about, 'copyOf') });
  const words = [demo ? 'demo, an invented blank' : '', origin, textOf(about, 'customer') ?? ''];
  return words.filter((word) => word !== '').join(' · ');
}

function heldWords(count: number): string {
  const fields = count === 1 ? 'One field was' : `${count} fields were`;
  return `${fields} left alone: another device has changed it since.`;
}

import { useEffect, useState, useSyncExternalStore } from 'react';
import type { DocumentStore } from '../store/document-store.ts';
import { openDocument } from '../store/open-document.ts';
import type { StoreSnapshot } from '../store/store-snapshot.ts';

export type Opening =
  | { kind: 'opening' }
  | { kind: 'failed'; reason: string; retry(): void }
  | { kind: 'open'; store: DocumentStore };

/** Opens a document for as long as the component stands; closes it afterwards. */
export function useOpenStore(id: string | undefined): Opening {
  const [opening, setOpening] = useState<Opening>({ kind: 'opening' });
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    if (id === undefined) return;
    let left = false;
    let opened: DocumentStore | undefined;
    const retry = () => setAttempt(attempt + 1);
    openDocument(id).then(
      (store) => {
        opened = store;
        if (left) store.close();
        else setOpening({ kind: 'open', store });
      },
      (error: unknown) => {
        if (!left) setOpening({ kind: 'failed', reason: reasonOf(error), retry });
      },
    );
    return () => {
      left = true;
      opened?.close();
    };
  }, [id, attempt]);
  return opening;
}

/** The store's snapshot, re-rendered whenever it changes. */
export function useSnapshot(store: DocumentStore): StoreSnapshot {
  return useSyncExternalStore(store.subscribe, store.getSnapshot);
}

export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

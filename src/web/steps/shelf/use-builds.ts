import { useCallback, useEffect, useState } from 'react';
import type { DocumentList } from '../../../record/api.ts';
import { reasonOf } from '../../read/open-store.ts';
import { api } from '../../store/open-document.ts';

export type Builds =
  | { kind: 'looking' }
  | { kind: 'failed'; reason: string }
  | { kind: 'found'; list: DocumentList };

/** Most builds listed at once; a search narrows them. */
const mostListed = 100;
/** Typing is waited out before the server is asked. */
const restMs = 200;

/** The builds that match a search, asked again by `refresh`. */
export function useBuilds(
  search: string,
  gone: boolean,
  kind: 'build' | 'ticket' = 'build',
): { builds: Builds; refresh(): void } {
  const [builds, setBuilds] = useState<Builds>({ kind: 'looking' });
  const [round, setRound] = useState(0);
  const refresh = useCallback(() => setRound((last) => last + 1), []);
  useEffect(() => {
    let late = false;
    const timer = setTimeout(() => {
      api.listDocuments({ kind, search, gone, limit: mostListed }).then(
        (list) => !late && setBuilds({ kind: 'found', list }),
        (error: unknown) => !late && setBuilds({ kind: 'failed', reason: reasonOf(error) }),
      );
    }, restMs);
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [kind, search, gone, round]);
  return { builds, refresh };
}

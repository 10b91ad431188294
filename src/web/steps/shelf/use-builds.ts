import { useCallback, useEffect, useState } from 'react';
import type { DocumentList } from '../../../record/api.ts';
import { reasonOf } from '../../read/open-store.ts';
import { api } from '../../store/open-document.ts';

export type Builds =
  | { kind: 'looking' }
  | { kind: 'failed'; reason: string }
  | { kind: 'found'; list: DocumentList };

/** Builds listed at first, and with each “show more”; a search narrows them. */
const listedAtOnce = 100;
/** Typing is waited out before the server is asked. */
const restMs = 200;

/** The builds that match a search, asked again by `refresh`. */
export function useBuilds(
  search: string,
  gone: boolean,
  kind: 'build' | 'ticket' = 'build',
): { builds: Builds; refresh(): void; more(): void } {
  const [builds, setBuilds] = useState<Builds>({ kind: 'looking' });
  const [round, setRound] = useState(0);
  const [pages, setPages] = useState(1);
  const more = useCallback(() => setPages((last) => last + 1), []);
  const refresh = useCallback(() => setRound((last) => last + 1), []);
  useEffect(() => {
    let late = false;
    const timer = setTimeout(() => {
      listPages({ kind, search, gone }, pages).then(
        (list) => !late && setBuilds({ kind: 'found', list }),
        (error: unknown) => !late && setBuilds({ kind: 'failed', reason: reasonOf(error) }),
      );
    }, restMs);
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [kind, search, gone, round, pages]);
  return { builds, refresh, more };
}

async function listPages(
  query: { kind: 'build' | 'ticket'; search: string; gone: boolean },
  pages: number,
): Promise<DocumentList> {
  const lists: DocumentList[] = [];
  for (let page = 0; page < pages; page++)
    lists.push(await api.listDocuments({ ...query, limit: listedAtOnce, offset: page * listedAtOnce }));
  return { documents: lists.flatMap((list) => list.documents), total: lists.at(-1)!.total };
}

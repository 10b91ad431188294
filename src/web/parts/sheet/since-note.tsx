import { munkres } from 'munkres';
import { useMemo } from 'react';
import { stateAt } from '../../../record/past.ts';
import { withHabits } from '../../../record/shop-habits.ts';
import { type Change, changedSince, type Work, type WorkDone, workDone } from '../../../record/work-since.ts';
import { instantWords } from '../../../words/intl.ts';
import { changeInWords, deedWords } from '../../../words/since.ts';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';

export interface Since {
  done: WorkDone;
  changes: Change[];
}

/** Work on paper or on the rod that no longer agrees with the record. */
export function useSince(works: readonly Work[]): Since[] {
  const { store, document } = useBuild();
  const { document: shop, operations: past } = useShop();
  const wanted = works.join(' ');
  return useMemo(() => {
    const log = document ? store.operations() : [];
    return workDone(log)
      .filter(({ work }) => wanted.split(' ').includes(work))
      .map((done) => ({
        done,
        changes: changedSince(log, done, document, {
          habits: (state, at) => withHabits(state, at === undefined ? shop : stateAt(past(), at, 'shop')),
          assign: munkres,
        }),
      }))
      .filter(({ changes }) => changes.length > 0);
  }, [store, document, shop, past, wanted]);
}

/** What has changed since sheets of this step were printed, or its work was done. */
export function SinceNote({ works }: { works: readonly Work[] }) {
  const { writer } = useShop();
  const since = useSince(works);
  if (since.length === 0) return null;
  return (
    <div role="status">
      {since.map(({ done, changes }) => (
        <p key={done.deed} className="attention">
          ▲ Since {deedWords[done.deed]} ({instantWords(done.at)}):{' '}
          {changes
            .slice(0, mostSaid)
            .map((change) => changeInWords(change, writer))
            .join('; ')}
          {changes.length > mostSaid && `; and ${changes.length - mostSaid} more`}.
        </p>
      ))}
    </div>
  );
}
const mostSaid = 6;

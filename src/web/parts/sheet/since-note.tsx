import { munkres } from 'munkres';
import { useMemo } from 'react';
import { stateAt } from '../../../record/past.ts';
import { withHabits } from '../../../record/shop-habits.ts';
import {
  type Change,
  changedSince,
  type SinceOptions,
  type Work,
  type WorkDone,
  workDone,
} from '../../../record/work-since.ts';
import { instantWords } from '../../../words/intl.ts';
import { changeInWords, deedWords } from '../../../words/since.ts';
import { useBuild } from '../../read/build-context.ts';
import { useSnapshot } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';

export interface Since {
  done: WorkDone;
  changes: Change[];
}

/** Work on paper or on the rod that no longer agrees with the record. */
function useSince(works: readonly Work[]): Since[] {
  const { store, document } = useBuild();
  const { document: shop, operations: past } = useShop();
  const { pastStates } = useSnapshot(store);
  const wanted = works.join(' ');
  return useMemo(() => {
    const options: SinceOptions = {
      habits: (state, at) => withHabits(state, at === undefined ? shop : stateAt(past(), at, 'shop')),
      assign: munkres,
    };
    return workDone(store.past.recent, store.past.before)
      .filter(({ work }) => wanted.split(' ').includes(work))
      .flatMap((done) => {
        const then = store.past.stateAfter(done.upTo);
        return then ? [{ done, changes: changedSince(then, done, document, options) }] : [];
      })
      .filter(({ changes }) => changes.length > 0);
  }, [store, document, shop, past, wanted, pastStates]);
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

import { useSyncExternalStore } from 'react';

/** As wide as a telephone held upright, as the style sheets have it. */
const narrow = () => matchMedia('(max-width: 40rem)');

export function useNarrow(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const query = narrow();
      query.addEventListener('change', changed);
      return () => query.removeEventListener('change', changed);
    },
    () => narrow().matches,
  );
}

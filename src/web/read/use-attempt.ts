import { useState } from 'react';
import { useSay } from './messages.tsx';
import { reasonOf } from './open-store.ts';

/** Carries out what was pressed; where it fails, says so and why: `No backup was made: the disk is full.` */
export function useAttempt() {
  const say = useSay();
  const [busy, setBusy] = useState(false);
  const attempt = (failed: string, work: () => Promise<unknown>): Promise<void> => {
    setBusy(true);
    return work()
      .then(
        () => undefined,
        (error: unknown) => say(`${failed}: ${reasonOf(error)}.`),
      )
      .finally(() => setBusy(false));
  };
  return { busy, attempt };
}

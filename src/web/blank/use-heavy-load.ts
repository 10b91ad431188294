import { checkFerrulesBound } from '../../engine/bench/ferrule-gate.ts';
import { useBench } from '../read/bench.tsx';
import { usePlanContext } from './plan-context.ts';

/** Why this weight waits until the ferrules are bound; undefined when it may be hung. */
export function useHeavyLoad(test: string, massKg: number | undefined): string | undefined {
  const { bench } = useBench();
  const plan = usePlanContext();
  if (!plan || massKg === undefined) return undefined;
  const { thirdLoadKg } = plan;
  return checkFerrulesBound(bench, { path: `tests/${test}/hung`, massKg, thirdLoadKg })[0]?.message;
}

import { checkFerrulesBound } from '../../../engine/bench/ferrule-gate.ts';
import type { Row } from '../../../record/document.ts';
import { useBench } from '../../read/bench.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { siOf } from '../../read/values.ts';
import { usePlanContext } from './plan-context.ts';

/**
 * Why this weight waits until the ferrules are bound; undefined when it may be hung. Only ferrules in front of
 * the clamp carries it.
 */
export function useHeavyLoad(test: Row, setup: Row): string | undefined {
  const sentence = useSentence();
  const { bench, blank } = useBench();
  const plan = usePlanContext();
  const massKg = siOf(test, 'hung');
  if (!plan || !bench || !blank || massKg === undefined) return undefined;
  const clampM = siOf(setup, 'clampFromTip') ?? blank.lengthM;
  const carrying = bench.sections.filter(
    (_, index) => (blank.joints[index]?.seat.fromTipM ?? clampM) < clampM,
  );
  const load = { path: `tests/${test.id}/hung`, massKg, thirdLoadKg: plan.thirdLoadKg };
  const [unbound] = checkFerrulesBound({ ...bench, sections: carrying }, load);
  return unbound && sentence(unbound);
}

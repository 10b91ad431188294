import type { BenchFinding } from '../../../engine/bench/bench-finding.ts';
import { checkFerrulesBound } from '../../../engine/bench/ferrule-gate.ts';
import type { Row } from '../../../record/document.ts';
import { type BenchReading, useBench } from '../../read/bench.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { siOf } from '../../read/values.ts';
import { usePlanContext } from './plan-context.ts';
import type { Plan } from './use-plan.ts';

/** Why this weight waits until the ferrules are bound; undefined when it may be hung. */
export function useHeavyLoad(test: Row, setup: Row): string | undefined {
  const sentence = useSentence();
  const unbound = unboundUnder(useBench(), usePlanContext(), test, setup);
  return unbound && sentence(unbound);
}

/** Only ferrules in front of the clamp carry the weight. */
export function unboundUnder(
  { bench, blank }: Pick<BenchReading, 'bench' | 'blank'>,
  plan: Plan | undefined,
  test: Row,
  setup: Row,
): BenchFinding | undefined {
  const massKg = siOf(test, 'hung');
  if (!plan || !bench || !blank || massKg === undefined) return undefined;
  const clampM = siOf(setup, 'clampFromTip') ?? blank.lengthM;
  const carrying = bench.sections.filter(
    (_, index) => (blank.joints[index]?.seat.fromTipM ?? clampM) < clampM,
  );
  const load = { path: `tests/${test.id}/hung`, massKg, thirdLoadKg: plan.thirdLoadKg };
  return checkFerrulesBound({ ...bench, sections: carrying }, load)[0];
}

import { useMemo } from 'react';
import { Link } from 'wouter';
import { type BendGate, bendGate } from '../../../engine/plan/bend-gate.ts';
import { readSoftWork } from '../../../record/read-soft-work.ts';
import { softInWords } from '../../../words/due.ts';
import { clockWords } from '../../../words/intl.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useNow } from '../../read/use-now.ts';

/** What is still too soft for the rod to be bent; undefined when nothing is. */
export function useBendGate(): BendGate | undefined {
  const { filled } = useBench();
  const soft = useMemo(() => readSoftWork(filled), [filled]);
  return bendGate(soft, useNow());
}

/** Stands before anything that bends the rod, until the last glue and coat are hard. */
export function NoBendYet() {
  const gate = useBendGate();
  const { id } = useBuild();
  const step = typeof gate?.soft === 'number' ? 'finish' : 'handle';
  return (
    <div role="status">
      {gate && (
        <p className="attention">
          ▲ Not to be bent before {clockWords(gate.untilMs, Date.now())}: {softInWords(gate)} is still soft.
          Hang nothing on it; the product’s data sheet comes first, and its time is entered under{' '}
          <Link href={`/builds/${id}/${step}`}>{step === 'finish' ? 'Finish' : 'Handle'}</Link>.
        </p>
      )}
    </div>
  );
}

import { useMemo } from 'react';
import { benchFit } from '../../../engine/stiffness/from-bench.ts';
import type { FitCurveSetup, FitRequest } from '../../../engine/stiffness/request.ts';
import { type LoadTest, readLoadTests } from '../../../record/read-load-tests.ts';
import { tracedPhoto } from '../../../record/traced-curves.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';

export interface TracedTest {
  test: LoadTest;
  /** Counted from 1 as the cards are. */
  number: number;
}

/** Load tests of which a curve was read, newest first. */
export function useTracedTests(): TracedTest[] {
  const { document } = useBuild();
  return useMemo(
    () =>
      readLoadTests(document)
        .map((test, i) => ({ test, number: i + 1 }))
        .filter(({ test }) => tracedPhoto(test) !== undefined)
        .reverse(),
    [document],
  );
}

export interface BareCurve {
  curve: FitCurveSetup;
  /** Everything else that was measured. */
  others: FitRequest;
}

/** The bare blank's photographs that count in the stiffness, by load test. */
export function useBareCurves(): ReadonlyMap<string, BareCurve> {
  const { bench } = useBench();
  return useMemo(() => {
    if (!bench || bench.sections.length === 0) return new Map();
    const { request, rows } = benchFit(bench);
    return new Map(
      request.setups.flatMap((setup, i): [string, BareCurve][] => {
        if (setup.kind !== 'curve') return [];
        const others = request.setups.filter((_, k) => k !== i);
        return [[rows[i].setupId, { curve: setup, others: { ...request, setups: others } }]];
      }),
    );
  }, [bench]);
}

import { useMemo } from 'react';
import type { Finding } from '../../engine/finding.ts';
import { type CoatsOnRod, coatsOnRod } from '../../engine/finish/coats-on-rod.ts';
import { coatFindings, timesFindings } from '../../engine/finish/schedule.ts';
import { temperatureFindings } from '../../engine/finish/temperature.ts';
import { type FinishChoices, readFinish } from '../../record/read-finish.ts';
import { useBench } from './bench.tsx';
import { useWraps } from './use-wraps.ts';

export interface FinishOnRod extends FinishChoices, Omit<CoatsOnRod, 'findings'> {
  findings: Finding[];
}

/** Volume, mix and times for the rod's wraps in this room. */
export function useFinish(nowMs: number): FinishOnRod {
  const { filled } = useBench();
  const wraps = useWraps();
  const read = useMemo(() => readFinish(filled), [filled]);
  return useMemo(() => {
    const { times, roomC, coats } = read;
    const onRod = coatsOnRod({ ...read, wraps: wraps?.plan });
    return {
      ...read,
      ...onRod,
      findings: [
        ...onRod.findings,
        ...temperatureFindings(times.statedC, roomC),
        ...timesFindings(times),
        ...coatFindings(coats, times, nowMs),
      ],
    };
  }, [read, wraps, nowMs]);
}

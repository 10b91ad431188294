import { useMemo } from 'react';
import type { Finding } from '../../engine/finding.ts';
import { type BatchPlan, planBatches } from '../../engine/finish/batches.ts';
import { coatVolumeM3 } from '../../engine/finish/coat-volume.ts';
import { coatFindings, timesFindings } from '../../engine/finish/schedule.ts';
import { temperatureFindings, timeAtRoom } from '../../engine/finish/temperature.ts';
import { type FinishChoices, readFinish } from '../../record/read-finish.ts';
import { useBench } from '../read/bench.tsx';
import { useWraps } from '../wraps/use-wraps.ts';

export interface FinishOnRod extends FinishChoices {
  /** One coat on the rod; the first soaks in more. 0 while nothing is wrapped. */
  firstCoatMl: number;
  laterCoatMl: number;
  batch: BatchPlan | undefined;
  potLifeMin: number;
  findings: Finding[];
}

/** Volume, mix and times for the rod's wraps in this room. */
export function useFinish(nowMs: number): FinishOnRod {
  const { filled } = useBench();
  const wraps = useWraps();
  const read = useMemo(() => readFinish(filled), [filled]);
  return useMemo(() => {
    const { times, roomC, coatThicknessM, footHeightM, mix, coats } = read;
    const laid = wraps?.plan.wraps ?? [];
    const volumeMl = (first: boolean) =>
      1e6 *
      coatVolumeM3({
        wraps: laid,
        laidWidthM: Number.isFinite(wraps?.choices.laidWidthM) ? (wraps?.choices.laidWidthM ?? 0) : 0,
        thicknessM: coatThicknessM,
        footHeightM,
        first,
      });
    const potLifeMin = timeAtRoom(times.potLifeS, times.statedC, roomC, times.halvesPerC) / 60;
    const firstCoatMl = volumeMl(true);
    const { plan, findings } = planBatches({ ...mix, neededMl: firstCoatMl, wraps: laid.length, potLifeMin });
    return {
      ...read,
      firstCoatMl,
      laterCoatMl: volumeMl(false),
      batch: laid.length > 0 ? plan : undefined,
      potLifeMin,
      findings: [
        ...findings,
        ...temperatureFindings(times.statedC, roomC),
        ...timesFindings(times),
        ...coatFindings(coats, times, nowMs),
      ],
    };
  }, [read, wraps, nowMs]);
}

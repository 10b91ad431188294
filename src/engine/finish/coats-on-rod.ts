/** What the coats of one rod take and how they are mixed: volumes from the wraps' own geometry, batches from the product. */
import type { BenchFinding } from '../bench/bench-finding.ts';
import type { WrapPlan } from '../wraps/plan-wraps.ts';
import { type BatchInput, type BatchPlan, planBatches } from './batches.ts';
import { coatVolumeM3 } from './coat-volume.ts';
import type { ProductTimes } from './schedule.ts';
import { timeAtRoom } from './temperature.ts';

interface CoatsInput {
  /** Left out: nothing is wrapped yet. */
  wraps?: Pick<WrapPlan, 'wraps' | 'laidWidthM'>;
  times: ProductTimes;
  roomC: number;
  coatThicknessM: number;
  footHeightM: number;
  mix: Omit<BatchInput, 'neededMl' | 'wraps' | 'potLifeMin'>;
}
export interface CoatsOnRod {
  /** One coat on the rod; the first soaks in more. 0 while nothing is wrapped. */
  firstCoatMl: number;
  laterCoatMl: number;
  potLifeMin: number;
  /** Undefined while nothing is wrapped, or a finding stops it. */
  batch: BatchPlan | undefined;
  findings: BenchFinding[];
}

export function coatsOnRod({
  wraps,
  times,
  roomC,
  coatThicknessM,
  footHeightM,
  mix,
}: CoatsInput): CoatsOnRod {
  const laid = wraps?.wraps ?? [];
  const laidWidthM = wraps?.laidWidthM ?? 0;
  const volumeMl = (first: boolean) =>
    1e6 * coatVolumeM3({ wraps: laid, laidWidthM, thicknessM: coatThicknessM, footHeightM, first });
  const potLifeMin = timeAtRoom(times.potLifeS, times.statedC, roomC, times.halvesPerC) / 60;
  const firstCoatMl = volumeMl(true);
  const { plan, findings } = planBatches({ ...mix, neededMl: firstCoatMl, wraps: laid.length, potLifeMin });
  return {
    firstCoatMl,
    laterCoatMl: volumeMl(false),
    potLifeMin,
    batch: laid.length > 0 ? plan : undefined,
    findings,
  };
}

import type { BatchPlan } from '../engine/finish/batches.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';

/** "2.7 + 2.3 g": both parts to the mark of what they are measured with, resin first. */
export function batchParts({ partA, partB, unit, measureStep }: BatchPlan): string {
  const places = decimalsOf(measureStep);
  return `${fixedDecimals(partA, places)} + ${fixedDecimals(partB, places)} ${unit}`;
}

/** What is thrown away, and what would waste less; empty where the rod takes it all. */
export function wasteWords(
  { finerStep, unit, measureStep, batches, batchMl }: BatchPlan,
  neededMl: number,
  ratioErrorPercent: number,
): string {
  if (finerStep === undefined) return '';
  const finer = Number(finerStep.toPrecision(1));
  const mixed = `You mix ${fixedDecimals(batches * batchMl, 1)} ml for ${fixedDecimals(neededMl, 1)} ml.`;
  return `${mixed} Less could be off by over ${ratioErrorPercent} %, read on marks of ${measureStep} ${unit}. Marks of ${finer} ${unit} waste less.`;
}

/** One at least; two at a mark of 0.01 or 0.05. */
function decimalsOf(step: number): number {
  return Math.min(3, Math.max(1, Math.ceil(-Math.log10(step) - 1e-9)));
}

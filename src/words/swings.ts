/** Swings counted by hand beside what is predicted, in words. */
import type { SwingPrediction } from '../engine/flow/power.ts';
import { countedHz, plusMinusHz, type SwingCount } from '../engine/flow/swing-count.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import type { Writer } from './writer.ts';

/** `1.43 Hz ±0.05 Hz`. */
export function hzInWords(hz: number, plusMinus: number | undefined): string {
  const write = (value: number) => `${fixedDecimals(value, 2)} Hz`;
  return plusMinus === undefined ? write(hz) : `${write(hz)} ±${write(plusMinus)}`;
}

/** What a count means beside the prediction for the same rod held at the same place. */
export function countInWords(
  count: SwingCount,
  prediction: SwingPrediction | undefined,
  writer: Writer,
): string {
  const read = countedHz(count);
  const words = `Counted ${hzInWords(read.hz, read.plusMinusHz)}`;
  const first = prediction?.modes[0];
  if (!prediction || !first) return `${words}. There is no prediction to compare it with.`;
  const unsure = plusMinusHz(first);
  const predicted = `predicted ${hzInWords(first.hz, unsure)}`;
  if (unsure === undefined)
    return `${words}, ${predicted} from the diameters alone: a guess of unknown range.`;
  const tolerance = Math.hypot(read.plusMinusHz, unsure);
  const off = read.hz - first.hz;
  if (Math.abs(off) <= tolerance) return `${words}, ${predicted}: they agree within their ±.`;
  return `${words}, ${predicted}: they disagree. ${reasonInWords(count, { off, tolerance, hz: first.hz, clampFromTipM: prediction.clampFromTipM }, writer)}`;
}

interface Disagreement {
  off: number;
  tolerance: number;
  /** Predicted. */
  hz: number;
  clampFromTipM: number;
}

/** f goes with √(stiffness/mass) and 1/length². */
function reasonInWords(
  { counted, seconds }: SwingCount,
  { off, tolerance, hz, clampFromTipM }: Disagreement,
  writer: Writer,
): string {
  const fewer = off > 0;
  const recounted = (counted + (fewer ? -1 : 1)) / seconds;
  const miscount =
    Math.abs(recounted - hz) <= tolerance
      ? `Count again: one swing ${fewer ? 'fewer' : 'more'} would make them agree. `
      : '';
  const ratio = counted / seconds / hz;
  const percent = fixedDecimals(100 * Math.abs(ratio ** 2 - 1), 0);
  const lengthM = clampFromTipM * Math.abs(1 - Math.sqrt(1 / ratio));
  const [stiff, held] = fewer
    ? ['stiffer or lighter', 'nearer the tip']
    : ['softer or heavier', 'farther from the tip'];
  return `${miscount}Check the clamp, what hangs on the rod, and which way it swung. It swings like a rod ${percent} % ${stiff}, or one held ${writer.length(lengthM)} ${held}.`;
}

/** Swings counted by hand beside what is predicted, in words. */
import type { SwingPrediction } from '../engine/flow/power.ts';
import { countedHz, plusMinusHz, type SwingCount } from '../engine/flow/swing-count.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatMm } from '../engine/units/format-quantity.ts';

/** `1.43 Hz ±0.05 Hz`. */
export function hzInWords(hz: number, plusMinus: number | undefined): string {
  const write = (value: number) => `${fixedDecimals(value, 2)} Hz`;
  return plusMinus === undefined ? write(hz) : `${write(hz)} ±${write(plusMinus)}`;
}

/** What a count means beside the prediction for the same rod held at the same place. */
export function countInWords(count: SwingCount, { modes, clampFromTipM }: SwingPrediction): string {
  const read = countedHz(count);
  const words = `Counted ${hzInWords(read.hz, read.plusMinusHz)}`;
  const first = modes[0];
  if (!first) return `${words}; nothing is predicted to set it beside.`;
  const unsure = plusMinusHz(first);
  const predicted = `predicted ${hzInWords(first.hz, unsure)}`;
  if (unsure === undefined)
    return `${words}, ${predicted} from the diameters alone, a guess whose range is not known.`;
  const tolerance = Math.hypot(read.plusMinusHz, unsure);
  const off = read.hz - first.hz;
  if (Math.abs(off) <= tolerance) return `${words}, ${predicted}: they agree within what both are sure of.`;
  return `${words}, ${predicted}: they disagree. ${reasonInWords(count, { off, tolerance, hz: first.hz, clampFromTipM })}`;
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
): string {
  const fewer = off > 0;
  const recounted = (counted + (fewer ? -1 : 1)) / seconds;
  const miscount =
    Math.abs(recounted - hz) <= tolerance
      ? `One swing ${fewer ? 'fewer' : 'more'} in the count would make them agree: count again. `
      : '';
  const ratio = counted / seconds / hz;
  const percent = fixedDecimals(100 * Math.abs(ratio ** 2 - 1), 0);
  const lengthM = clampFromTipM * Math.abs(1 - Math.sqrt(1 / ratio));
  const [stiff, held] = fewer
    ? ['stiffer, or lighter,', 'nearer the tip']
    : ['softer, or heavier,', 'farther from the tip'];
  return `${miscount}It swings as a rod ${percent} % ${stiff} would, or one held ${formatMm(lengthM, 0)} ${held}: look at the clamp, what hangs on the rod, and which way it swung.`;
}

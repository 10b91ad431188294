/** The grip ahead of the reel, which the line passes. A fixed spool's whole fan is asked for instead (flow/reel-line.ts). */
import type { Handle } from '../bench/bench.ts';
import type { Foregrip } from '../layout/line-on-blank.ts';
import type { Choices } from './choices.ts';

/** Undefined where the line passes none, or where a fan says it. */
export function foregripOf(handle: Handle, { line }: Pick<Choices, 'line'>): Foregrip | undefined {
  if (line?.reel.kind !== 'multiplier') return undefined;
  const lengthM = handle.gripFrontFromButtM - handle.reelFromButtM;
  return lengthM > 0 ? { lengthM, radiusM: line.gripDiameterM / 2 } : undefined;
}

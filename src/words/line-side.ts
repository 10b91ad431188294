import type { LineSide } from '../engine/bench/line-side.ts';
import { halfDegrees } from './writer.ts';

/** `45° from the label (soft side, two loads)`; `0° from the reference mark`. */
export function lineSideInWords({ angleRad, reference, method }: LineSide): string {
  const from = reference ?? 'the reference mark';
  return `${halfDegrees(angleRad)} from ${from}${method === undefined ? '' : ` (${method})`}`;
}

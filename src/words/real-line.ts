/** The line as it runs, in words: what the reel feels, and the worst reading with friction in the rings. */
import type { RealLineAtLoad } from '../engine/layout/real-line.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { standardGravity } from '../engine/units/gravity.ts';
import type { Writer } from './writer.ts';

/** `140 to 226 g`; a bend that did not settle is not counted. */
export function reelFeelsInWords({ rubbing }: RealLineAtLoad, way: 'in' | 'out', w: Writer): string {
  const felt = rubbing
    .filter(({ friction, status }) => friction.direction === way && status === 'converged')
    .map(({ reelTensionN }) => reelTensionN / standardGravity);
  return rangeInWords(felt, w.load).replace(/ (g|oz)(?= to )/, '');
}

/** `97 to 99 %` of its limit. */
export function worstRubbingInWords({ rubbing }: RealLineAtLoad): string {
  const settled = rubbing.filter(({ status }) => status === 'converged');
  const ratios = settled.map(({ worst }) => worst.ratio);
  return rangeInWords(ratios, (ratio) => `${fixedDecimals(100 * ratio, 0)} %`).replace(/ %(?= to )/, '');
}

function rangeInWords(values: readonly number[], write: (value: number) => string): string {
  if (values.length === 0) return 'no bend found';
  const [low, high] = [write(Math.min(...values)), write(Math.max(...values))];
  return low === high ? low : `${low} to ${high}`;
}

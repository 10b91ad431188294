import type { NextMove } from '../../../engine/flow/next-move.ts';

/**
 * `as-even`: other marks than the best, and the best bring nothing more that the headline would count. `keep`: what it keeps
 * for want of sureness is not the builder's own yet.
 */
export type PlaceOffer = 'placed' | 'as-even' | 'first' | 'offered' | 'keep';

/** How "Place the guides" stands beside what the headline says: the two speak with one voice. */
export function placeOffer(isBest: boolean, areOwn: boolean, said: NextMove['code'] | undefined): PlaceOffer {
  if (said === 'keep') return areOwn ? 'as-even' : isBest ? 'keep' : 'first';
  if (areOwn && isBest) return 'placed';
  if (areOwn && (said === 'as-even-as-it-gets' || said === 'beyond-limits')) return 'as-even';
  return said === 'place-anew' ? 'first' : 'offered';
}

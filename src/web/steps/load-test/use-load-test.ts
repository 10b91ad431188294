import { formatLength } from '../../../engine/units/format-quantity.ts';
import { useShop } from '../../read/shop.tsx';

/** Lengths on a wall, to the millimetre or the eighth of an inch. */
export function useWallLength(): (lengthM: number) => string {
  const { system } = useShop();
  return (lengthM) => formatLength(lengthM, { system, denominator: 8, decimals: 0 }).replace('-', '−');
}

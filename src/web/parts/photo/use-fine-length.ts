import { useCallback } from 'react';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { useShop } from '../../read/shop.tsx';

/** Lengths in a picture: to the millimetre, or the sixteenth of an inch. */
export function useFineLength(): (lengthM: number) => string {
  const { system } = useShop();
  return useCallback(
    (lengthM) => formatLength(lengthM, { system, denominator: 16, decimals: 0 }).replace('-', '−'),
    [system],
  );
}

import { useMemo } from 'react';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { useBench } from '../../read/bench.tsx';
import { type SheetModel, sheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { tablesOf } from '../../read/tables-of.ts';

/** The rod as it will be tested; undefined until the blank and its guides are known. */
export function useTestedRod(): SheetModel | undefined {
  const { bench, choices, profile, stiffness } = useBench();
  const { solved } = stiffness;
  return useMemo(() => {
    const tables = tablesOf(solved, profile, bench?.material ?? 'unknown');
    return bench && choices && tables ? sheetModel({ bench, choices, tables }) : undefined;
  }, [bench, choices, profile, solved]);
}

/** Lengths on a wall, to the millimetre or the eighth of an inch. */
export function useWallLength(): (lengthM: number) => string {
  const { system } = useShop();
  return (lengthM) => formatLength(lengthM, { system, denominator: 8, decimals: 0 }).replace('-', '−');
}

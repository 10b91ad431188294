import { useMemo } from 'react';
import type { BlankTables } from '../../engine/bench/free-rod.ts';
import { useBench } from './bench.tsx';
import { type SheetModel, sheetModel } from './sheet-model.ts';
import { tablesOf } from './tables-of.ts';

interface RodSheet {
  tables: BlankTables;
  sheet: SheetModel | undefined;
}

/** The blank as it is best known and the rod made of it; undefined while no blank can be bent. */
export function useRodSheet(): RodSheet | undefined {
  const { bench, choices, profile, stiffness } = useBench();
  const { solved } = stiffness;
  return useMemo(() => {
    const tables = tablesOf(solved, profile, bench?.material ?? 'unknown');
    return bench && choices && tables ? { tables, sheet: sheetModel({ bench, choices, tables }) } : undefined;
  }, [bench, choices, profile, solved]);
}

/** Undefined until the blank and its guides are known. */
export function useSheetModel(): SheetModel | undefined {
  return useRodSheet()?.sheet;
}

/** Its own marks can be bent. */
export function ownMarks(sheet: SheetModel | undefined): SheetModel | undefined {
  return sheet && !sheet.unreadable && sheet.marksAre === 'own' ? sheet : undefined;
}

import { useMemo } from 'react';
import type { BlankTables } from '../../../engine/bench/free-rod.ts';
import { useBench } from '../../read/bench.tsx';
import { type SheetModel, sheetModel } from '../../read/sheet-model.ts';
import { tablesOf } from '../../read/tables-of.ts';

/** The rod on record as its Layout sheet has it; undefined where no blank can be bent yet. */
export function useRecordedSheet(): { sheet: SheetModel | undefined; tables: BlankTables } | undefined {
  const { bench, choices, profile, stiffness } = useBench();
  const { solved } = stiffness;
  return useMemo(() => {
    const tables = tablesOf(solved, profile, bench?.material ?? 'unknown');
    return bench && choices && tables ? { sheet: sheetModel({ bench, choices, tables }), tables } : undefined;
  }, [bench, choices, profile, solved]);
}

/** Its own marks can be bent. */
export function ownMarks(sheet: SheetModel | undefined): SheetModel | undefined {
  return sheet && !sheet.unreadable && sheet.marksAre === 'own' ? sheet : undefined;
}

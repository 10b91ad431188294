import { useRef } from 'react';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { DeedId } from '../../../words/deeds.ts';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { Gesture } from '../../store/store-snapshot.ts';
import { countChanges } from './guide-rows.ts';
import type { LiveSheet } from './live-sheet.ts';
import { markChanges } from './mark-changes.ts';

/** Steps on one guide that follow each other within this are one gesture, and one undo. */
const oneGestureMs = 2500;

export type Marks = ReturnType<typeof useMarks>;

/** Writes marks to the record: one gesture for a drag, for a run of steps, for a whole layout. */
export function useMarks(sheet: LiveSheet | undefined, model: SheetModel, system: UnitSystem) {
  const { write, gesture, newRowId, rows } = useBuild();
  const run = useRef<{ guide: number; gesture: Gesture; atMs: number }>(undefined);
  const writing = { choices: model.choices, system, newRowId };

  const moved = (guide: number, fromTipM: number) => {
    const nowMs = performance.now();
    const last = run.current;
    const goesOn = last?.guide === guide && nowMs - last.atMs < oneGestureMs;
    const one = goesOn ? last.gesture : gesture(`moveGuide:${guide + 1}`);
    run.current = { guide, gesture: one, atMs: nowMs };
    const marks = model.field.fromTipM.map((at, i) => (i === guide ? fromTipM : at));
    write(one, markChanges(marks, writing));
  };
  const placeAll = (deed: DeedId, fromTipM: readonly number[]) => {
    run.current = undefined;
    write(deed, markChanges(fromTipM, writing));
  };
  return {
    moved,
    /** A move of its own, and one undo, even right after a drag of the same guide. */
    moveOne: (guide: number, fromTipM: number) => {
      run.current = undefined;
      moved(guide, fromTipM);
      run.current = undefined;
    },
    step: (guide: number, byM: number, tape: Parameters<LiveSheet['step']>[2]) => {
      if (!sheet) return;
      const before = sheet.frame.fromTipM[guide];
      const at = sheet.step(guide, byM, tape);
      if (at !== before) moved(guide, at);
    },
    place: (fromTipM: readonly number[]) => placeAll('placeAll', fromTipM),
    lay: (fromTipM: readonly number[]) => {
      run.current = undefined;
      write('layGuides', countChanges(model.choices, fromTipM, { rows: rows('guides'), newRowId, system }));
    },
    useStart: () => placeAll('placeAsStart', model.startFromTipM),
    takeUp: () => placeAll('takeGuides', model.field.fromTipM),
    pin: (guide: number, pinned: boolean) => {
      const row = model.choices.guides[guide]?.id;
      if (row === undefined) return;
      const deed = `${pinned ? 'pinGuide' : 'unpinGuide'}:${guide + 1}` as const;
      write(deed, [{ path: ['guides', row, 'pinned'], value: pinned ? true : null }]);
    },
  };
}

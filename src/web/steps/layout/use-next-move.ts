import { useMemo } from 'react';
import { heedCounts } from '../../../engine/flow/heed-counts.ts';
import type { KeptMarks, NextMove } from '../../../engine/flow/next-move.ts';
import type { LayoutAnswer, LayoutFound } from '../../../engine/layout/layout.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import { dragTape } from '../../../words/tape.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { NextMoveTask } from '../../worker/messages.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import { useSame } from '../../worker/use-same.ts';
import { sameMarks } from './start-state.ts';

export interface WhatNext {
  /** Of the marks as they stand; undefined while it is worked out. */
  answer: NextMove | undefined;
  working: boolean;
  /** Least worst ratio that placing all guides anew reaches. */
  placedWorst: number | undefined;
}

/** What to do first about the settled marks, worked out once the best layout is known. */
export function useNextMove(
  model: SheetModel,
  best: { answer: LayoutAnswer | undefined; working: boolean },
  /** The best marks, on the tape. */
  bestMarks: readonly number[] | undefined,
  system: UnitSystem,
): WhatNext {
  const { request, field, unreadable } = model;
  const found = best.answer?.status === 'refused' ? undefined : best.answer;
  const placedWorst = best.working ? undefined : found?.score.worst;
  const kept = useSame(keptMarks(model, found, bestMarks));
  const task = useMemo((): NextMoveTask | undefined => {
    if (unreadable || placedWorst === undefined) return undefined;
    const question = { request, fromTipM: field.fromTipM, placedWorst, kept };
    return { does: 'nextMove', question, snapM: dragTape(system).stepM };
  }, [request, field, unreadable, placedWorst, kept, system]);
  const { answer, working } = useLongTask(task);
  return { answer: working ? undefined : answer, working: working || best.working, placedWorst };
}

/** Undefined where the start is not kept, or the builder's own marks are others. */
function keptMarks(
  { field, startFromTipM, marksAre }: SheetModel,
  found: LayoutFound | undefined,
  bestMarks: readonly number[] | undefined,
): KeptMarks | undefined {
  const why = found?.verdict.startKept;
  if (!why || !bestMarks) return undefined;
  if (!sameMarks(bestMarks, field.fromTipM))
    return marksAre === 'start' ? { why, marks: 'broken-start' } : undefined;
  return { why, marks: sameMarks(found.fromTipM, startFromTipM) ? 'start' : 'neighbour' };
}

/** With the fewest guides that keep the limits, once that is known. */
export function withCounts(
  { answer, placedWorst }: WhatNext,
  fewest: number | undefined,
): NextMove | undefined {
  return answer && heedCounts(answer, { placedWorst, fewest });
}

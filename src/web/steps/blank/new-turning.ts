import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';

interface NewTurning {
  /** Over half a turn, or over the whole one. */
  steps: 4 | 8;
  order: number;
  newRowId(): string;
}

/** The changes that lay out a turning of a section: one row every 45°. */
export function newTurning(section: string, { steps, order, newRowId }: NewTurning): Change[] {
  const turning = newRowId();
  const turns = Array.from({ length: steps }, (_, step): Change[] => {
    const turn = newRowId();
    const degrees = 45 * step;
    return rowChanges('turnReadings', turn, {
      order: step + 1,
      turning,
      turn: { si: (degrees * Math.PI) / 180, text: `${degrees}°` },
    });
  });
  return [...rowChanges('turnings', turning, { order, section, held: 'span' }), ...turns.flat()];
}

import type { Change } from '../../../record/operation.ts';

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
    return [
      { path: ['turnReadings', turn, 'order'], value: step + 1 },
      { path: ['turnReadings', turn, 'turning'], value: turning },
      { path: ['turnReadings', turn, 'turn'], value: { si: (degrees * Math.PI) / 180, text: `${degrees}°` } },
    ];
  });
  return [
    { path: ['turnings', turning, 'order'], value: order },
    { path: ['turnings', turning, 'section'], value: section },
    { path: ['turnings', turning, 'held'], value: 'span' },
    ...turns.flat(),
  ];
}

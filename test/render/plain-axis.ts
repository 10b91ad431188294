import type { BentBlank } from './bent-blank.ts';
import type { Place } from './canvas.ts';

/** How far a place is off the blank's axis, found quickly: segments by cells of the wall. */
export interface AxisLookup {
  /** Undefined where no part of the blank is near; positive on the upper side. */
  at(place: Place): { offM: number; radiusM: number } | undefined;
  isNear(place: Place): boolean;
}

export function axisLookup({ axis, radiusM }: BentBlank, cellM: number): AxisLookup {
  const cells = new Map<number, number[]>();
  const cellOf = (x: number, y: number) => Math.floor(x / cellM) * 100_003 + Math.floor(y / cellM);
  for (let i = 0; i + 1 < axis.length; i++) {
    const { x, y } = axis[i];
    for (const dx of [-cellM, 0, cellM]) {
      for (const dy of [-cellM, 0, cellM]) {
        const cell = cellOf(x + dx, y + dy);
        const list = cells.get(cell);
        if (list?.[list.length - 1] === i) continue;
        if (list) list.push(i);
        else cells.set(cell, [i]);
      }
    }
  }
  const segments = (place: Place) => cells.get(cellOf(place.x, place.y));
  return {
    isNear: (place) => segments(place) !== undefined,
    at(place) {
      let best: { offM: number; radiusM: number } | undefined;
      for (const i of segments(place) ?? []) {
        const [a, b] = [axis[i], axis[i + 1]];
        const [dx, dy] = [b.x - a.x, b.y - a.y];
        const square = dx * dx + dy * dy;
        const share = ((place.x - a.x) * dx + (place.y - a.y) * dy) / square;
        // The ends are cut square.
        if (share < 0 || share > 1) continue;
        const offM = (dx * (place.y - a.y) - dy * (place.x - a.x)) / Math.sqrt(square);
        if (best && Math.abs(best.offM) <= Math.abs(offM)) continue;
        best = { offM, radiusM: radiusM[i] + share * (radiusM[i + 1] - radiusM[i]) };
      }
      return best;
    },
  };
}

/** Whether the camera of a stand stood still between its pictures, by where the blank leaves its hold in each of them. */
import { oneCamera } from './one-camera.ts';
import type { FitCurvePoint, FitCurveSetup } from './request.ts';

/** Where a curve begins in its picture, the direction in which it leaves, and the scale there. */
export interface HoldSeen {
  x: number;
  y: number;
  alongRad: number;
  mPerPx: number;
}

/** A camera that moved shows at the hold, square to the blank; taps of pictures agree better than this. Judgement. */
const stillPx = { hold: 4, miss: 5 };

/**
 * The pictures' points at the places which one camera gives them all; undefined where the camera moved, or it is not known
 * where the points were seen. `heldAs` is the same for pictures held at one place, turned alike.
 */
export function throughOneCamera(
  pictures: readonly { setup: FitCurveSetup; heldAs: string }[],
): FitCurvePoint[][] | undefined {
  if (pictures.length < 2 || !holdsStandStill(pictures)) return undefined;
  const one = oneCamera(pictures.map(({ setup }) => setup.tests[0].points));
  return one && Math.max(...one.missPx) < stillPx.miss ? one.pictures : undefined;
}

function holdsStandStill(pictures: readonly { setup: FitCurveSetup; heldAs: string }[]): boolean {
  const first = new Map<string, HoldSeen>();
  return pictures.every(({ setup, heldAs }) => {
    const seen = holdSeen(setup.tests[0].points);
    if (!seen) return false;
    const other = first.get(heldAs) ?? seen;
    first.set(heldAs, other);
    return offSquarePx(seen, other) < stillPx.hold;
  });
}

function offSquarePx(a: HoldSeen, b: HoldSeen): number {
  return Math.abs((a.x - b.x) * Math.sin(b.alongRad) - (a.y - b.y) * Math.cos(b.alongRad));
}

export function holdSeen(points: readonly FitCurvePoint[]): HoldSeen | undefined {
  const [first, next] = [points[0], points[Math.min(points.length - 1, 10)]];
  if (!first.px || !next.px) return undefined;
  const [x, y] = first.px;
  const [alongX, alongY] = [next.px[0] - x, next.px[1] - y];
  const mPerPx = Math.hypot(next.xM - first.xM, next.yM - first.yM) / Math.max(1, Math.hypot(alongX, alongY));
  return { x, y, alongRad: Math.atan2(alongY, alongX), mPerPx };
}

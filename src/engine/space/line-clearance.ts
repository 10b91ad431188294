/** How far the line clears the blank, stretch by stretch, where it runs straight from ring to ring and on to the reel. */
import { type PiecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { type Point, segmentDistance } from '../numerics/segment-distance.ts';
import type { SpaceAnswer } from './space-answer.ts';

export interface StraightLine {
  /** Stations of the rings, tip-top first. */
  ringFromTipM: readonly number[];
  reelM: Point;
  /** Outside diameter along the blank. */
  outside: PiecewiseLinear;
}

/** One for each ring's stretch towards the reel, tip-top first; negative where the line would run through the blank. */
export function lineClearance(
  { points, rings }: Pick<SpaceAnswer, 'points' | 'rings'>,
  { ringFromTipM, reelM, outside }: StraightLine,
): number[] {
  const centres: Point[] = [...rings.map(({ xM, yM, zM }): Point => [xM, yM, zM]), reelM];
  return ringFromTipM.map((fromTipM, k) => {
    const toTipM = ringFromTipM[k + 1] ?? Number.POSITIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]];
      if (b.fromTipM <= fromTipM + 1e-9 || a.fromTipM >= toTipM - 1e-9) continue;
      const offM = segmentDistance([a.xM, a.yM, a.zM], [b.xM, b.yM, b.zM], centres[k], centres[k + 1]);
      least = Math.min(least, offM - 0.5 * valueAt(outside, 0.5 * (a.fromTipM + b.fromTipM)));
    }
    return least;
  });
}

/** How far the straight line from the last ring to the reel clears a round grip behind the front of the blank. */
export function gripClearance(
  { rings }: Pick<SpaceAnswer, 'rings'>,
  { reelM, buttAngleRad, lengthM, radiusM }: StraightGrip,
): number {
  const { xM, yM, zM } = rings[rings.length - 1];
  const rear: Point = [-lengthM * Math.cos(buttAngleRad), -lengthM * Math.sin(buttAngleRad), 0];
  return segmentDistance([0, 0, 0], rear, [xM, yM, zM], reelM) - radiusM;
}
interface StraightGrip {
  reelM: Point;
  buttAngleRad: number;
  lengthM: number;
  radiusM: number;
}

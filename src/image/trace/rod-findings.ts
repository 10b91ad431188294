import type { Finding } from '../../engine/finding.ts';
import { said } from '../../engine/finding.ts';
import type { Point } from '../camera/homography.ts';
import type { OtherRod } from './other-rods.ts';
import type { TracedPoint } from './trace-request.ts';

/**
 * A rod that shares the trace's butt or tip and then leaves it was half traced; any other is merely in the picture.
 * Between two rods there is a stretch without edges: one such rod alone counts only beside that.
 */
export function rodFindings(
  rods: readonly OtherRod[],
  points: readonly TracedPoint[],
  seenShare: number,
): Finding[] {
  const [atButt, atTip] = [rods.find(sharesButt), rods.find(sharesTip)];
  const left = atButt ?? atTip;
  if (left && ((atButt && atTip) || seenShare < 0.96)) {
    const at = left.leavesPx ?? left.thinPx;
    return [
      said(
        'ends',
        `two rods are in the picture, and the drawn curve goes over from one to the other, near pixel ${place(at)}: it ` +
          'is neither of them, so do not use its numbers. Tap butt and tip of the one that is meant and a point ' +
          'between, or take the other rod away and photograph again',
      ),
    ];
  }
  // What runs along the end of a trace with both edges seen is its own line or shadow.
  const other = rods.find((rod) => !sharesButt(rod) && !sharesTip(rod));
  if (!other) return [];
  const [butt, tip] = [points[0], points[points.length - 1]].map(({ px: [x, y] }) => place({ x, y }));
  return [
    said(
      'image',
      `another bent rod is in the picture, about from pixel ${place(other.thickPx)} to ${place(other.thinPx)}. Traced was ` +
        `the one tapped, with its butt at ${butt} and its tip at ${tip}. If the other is meant, tap its butt and tip ` +
        'and a point between; else take it away, or check that the drawn curve stays on its rod',
    ),
  ];
}

function sharesButt({ shared }: OtherRod): boolean {
  return shared !== undefined && shared.from < 0.15 && shared.to > 0.1;
}

function sharesTip({ shared }: OtherRod): boolean {
  return shared !== undefined && shared.to > 0.85 && shared.from < 0.9;
}

function place({ x, y }: Point): string {
  return `(${Math.round(x)}, ${Math.round(y)})`;
}

import type { Finding } from '../../engine/finding.ts';
import { imageFound } from '../image-kinds.ts';
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
    return [imageFound('ends', 'trace/two-rods', { xPx: at.x, yPx: at.y })];
  }
  // What runs along the end of a trace with both edges seen is its own line or shadow.
  const other = rods.find((rod) => !sharesButt(rod) && !sharesTip(rod));
  if (!other) return [];
  const [[buttXPx, buttYPx], [tipXPx, tipYPx]] = [points[0].px, points[points.length - 1].px];
  return [
    imageFound('image', 'trace/other-rod', {
      thickXPx: other.thickPx.x,
      thickYPx: other.thickPx.y,
      thinXPx: other.thinPx.x,
      thinYPx: other.thinPx.y,
      buttXPx,
      buttYPx,
      tipXPx,
      tipYPx,
    }),
  ];
}

function sharesButt({ shared }: OtherRod): boolean {
  return shared !== undefined && shared.from < 0.15 && shared.to > 0.1;
}

function sharesTip({ shared }: OtherRod): boolean {
  return shared !== undefined && shared.to > 0.85 && shared.from < 0.9;
}

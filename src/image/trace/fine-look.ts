import type { Point } from '../camera/homography.ts';
import { type Pixels, pixelsReduced } from '../pixels.ts';
import { type CoarseRidges, toPicture, toReduced } from './coarse-path.ts';
import { type OtherRod, otherRods } from './other-rods.ts';
import { type RefinedCentreline, refineCentreline } from './refine-centreline.ts';
import { tipBlurPx } from './tip-blur.ts';

export interface FineLookChoice {
  /** Widths and reaches are in pixels of a picture no longer than this; a longer one is reduced first. */
  sidePx: number;
}

export const fineLookChoice: FineLookChoice = { sidePx: 6000 };

interface FineLook {
  refined: RefinedCentreline;
  rods: OtherRod[];
  /** tip-blur.ts */
  tipBlurPx: number;
}

/**
 * The middle of the blank and the other rods, in the picture's own pixels. Four pixels of a 50 MP picture tell what one
 * of a 12 MP picture does: reducing it costs a place nothing that grain has not taken already.
 */
export function fineLook(
  pixels: Pixels,
  coarse: { path: readonly Point[]; ridges: CoarseRidges },
  ends: { butt: Point; tip: Point },
  choice = fineLookChoice,
): FineLook {
  const factor = Math.ceil(Math.max(pixels.width, pixels.height) / choice.sidePx);
  const fine = factor > 1 ? pixelsReduced(pixels, factor) : pixels;
  const down = (at: Point): Point => toReduced(at, factor);
  const up = (value: number): number => (value + 0.5) * factor - 0.5;
  const refined = refineCentreline(fine, coarse.path.map(down), down(ends.butt), down(ends.tip));
  const ridges = { ...coarse.ridges, factor: coarse.ridges.factor / factor };
  const rods = otherRods(fine, ridges, refined);
  const blurPx = tipBlurPx(fine, refined);
  if (factor === 1) return { refined, rods, tipBlurPx: blurPx };
  const { line } = refined;
  return {
    tipBlurPx: factor * blurPx,
    refined: {
      ...refined,
      line: { stepPx: factor * line.stepPx, x: line.x.map(up), y: line.y.map(up) },
      halfPx: refined.halfPx.map((half) => factor * half),
      sigmaPx: refined.sigmaPx.map((sigma) => factor * sigma),
    },
    rods: rods.map((rod) => ({
      ...rod,
      thickPx: toPicture(rod.thickPx, factor),
      thinPx: toPicture(rod.thinPx, factor),
      ...(rod.leavesPx ? { leavesPx: toPicture(rod.leavesPx, factor) } : {}),
    })),
  };
}

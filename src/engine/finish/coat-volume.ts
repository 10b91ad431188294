/**
 * Finish on the wraps, one coat.
 *
 * A coat of thickness t over a wrap of width w on a diameter D (thread on it): a hollow cylinder,
 * V = π ((D/2 + t)² − (D/2)²) w. Beside each foot of height h the coat fills two right triangles of h × h, V = h² l.
 * Thread itself soaks up the room between its round strands in the first coat: (1 − π/4) of w × d × π (D + d).
 * Solid geometry; the coat's thickness (0.25 mm) and the foot's height (0.8 mm) are common practice, no source.
 */
import type { Wrap } from '../wraps/plan-wraps.ts';

interface CoatInput {
  wraps: readonly Pick<Wrap, 'fromTipM' | 'toTipM' | 'outsideM' | 'overFoot'>[];
  laidWidthM: number;
  thicknessM: number;
  /** Left out: as common. */
  footHeightM?: number;
  /** Only the first coat soaks in. */
  first: boolean;
}

/** Cubic metres on the rod; nothing for brush and cup. */
export function coatVolumeM3({
  wraps,
  laidWidthM,
  thicknessM,
  footHeightM = commonFootHeightM,
  first,
}: CoatInput): number {
  return wraps.reduce((sum, wrap) => {
    const widthM = wrap.toTipM - wrap.fromTipM;
    const soaked = first
      ? (1 - Math.PI / 4) * laidWidthM * Math.PI * (wrap.outsideM + laidWidthM) * widthM
      : 0;
    const fillet = wrap.overFoot && first ? footHeightM ** 2 * widthM : 0;
    return sum + hollowCylinderM3(wrap.outsideM + 2 * laidWidthM, thicknessM, widthM) + soaked + fillet;
  }, 0);
}

/** Volume of a wall of a thickness outside a diameter. */
export function hollowCylinderM3(insideM: number, wallM: number, lengthM: number): number {
  return Math.PI * wallM * (insideM + wallM) * lengthM;
}

export const commonFootHeightM = 0.0008;

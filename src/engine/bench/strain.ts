/**
 * Surface strain of a bent blank: ε = κ·OD/2, κ the curvature, OD the outside diameter; a thin shell's outer
 * fibre, its natural bow left out.
 *
 * Levels: judgement drawn from published strengths of unidirectional laminates (compression governs; Zweben 1989
 * gives 0.3 % for the stiffest carbon, others 0.49 to 1.1 %; E-glass 1.5 % and more). Never a promise that a blank
 * will hold.
 */
import type { Bench, Material } from './bench.ts';

export interface StrainLevels {
  cautionPercent: number;
  stopPercent: number;
  /** Whether the builder set them. */
  own: boolean;
}
export type StrainVerdict = 'within' | 'caution' | 'stop';

export const defaultStrainLevels: Record<Material, { cautionPercent: number; stopPercent: number }> = {
  carbon: { cautionPercent: 0.25, stopPercent: 0.4 },
  glass: { cautionPercent: 0.6, stopPercent: 1 },
  /** The careful choice of the two. */
  unknown: { cautionPercent: 0.25, stopPercent: 0.4 },
};

export function surfaceStrainPercent(curvaturePerM: number, outsideM: number): number {
  return Math.abs(curvaturePerM) * (outsideM / 2) * 100;
}

export function strainLevels(
  bench: Pick<Bench, 'material' | 'strainCautionPercent' | 'strainStopPercent'>,
): StrainLevels {
  const common = defaultStrainLevels[bench.material];
  return {
    cautionPercent: bench.strainCautionPercent ?? common.cautionPercent,
    stopPercent: bench.strainStopPercent ?? common.stopPercent,
    own: bench.strainCautionPercent !== undefined || bench.strainStopPercent !== undefined,
  };
}

export function strainVerdict(strainPercent: number, levels: StrainLevels): StrainVerdict {
  if (strainPercent >= levels.stopPercent) return 'stop';
  return strainPercent >= levels.cautionPercent ? 'caution' : 'within';
}

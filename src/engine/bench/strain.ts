/**
 * Surface strain of a bent blank: ε = κ·OD/2, κ the curvature, OD the outside diameter; a thin shell's outer
 * fibre, its natural bow left out.
 * Levels by material: materials.ts. A load may be computed beyond them; it is not hung.
 */
import type { Bench } from './bench.ts';
import { materials } from './materials.ts';

export interface StrainLevels {
  cautionPercent: number;
  stopPercent: number;
  /** Whether the builder set them. */
  own: boolean;
}
type StrainVerdict = 'within' | 'caution' | 'stop';

export function surfaceStrainPercent(curvaturePerM: number, outsideM: number): number {
  return Math.abs(curvaturePerM) * (outsideM / 2) * 100;
}

export function strainLevels(
  bench: Pick<Bench, 'material' | 'strainCautionPercent' | 'strainStopPercent'>,
): StrainLevels {
  const common = materials[bench.material].strain;
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

/** How many of the loads may be hung, the lightest first: those below the first that strains up to the caution level. */
export function loadsToHang(strainPercents: readonly number[], levels: StrainLevels): number {
  const first = strainPercents.findIndex((one) => strainVerdict(one, levels) !== 'within');
  return first < 0 ? strainPercents.length : first;
}

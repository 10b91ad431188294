import { type StrainLevels, strainVerdict } from '../engine/bench/strain.ts';

/**
 * From which load on the surface strains past the caution level, and from which on it must not be hung; both stand
 * there. `names` and `percent` by load, the lightest first; empty where every load stays within.
 */
export function strainWords(
  names: readonly string[],
  percent: readonly number[],
  levels: StrainLevels,
): string {
  const verdicts = percent.map((one) => strainVerdict(one, levels));
  const [caution, stop] = (['caution', 'stop'] as const).map((level) => verdicts.indexOf(level));
  const from = (load: number) => `From ${names[load]} on the surface strains ${percent[load].toFixed(2)} %`;
  const cautionWords =
    caution < 0 ? '' : `${from(caution)}, past the caution level of ${levels.cautionPercent} %.`;
  const stopWords = stop < 0 ? '' : `${from(stop)}. Do not hang it: stop at ${levels.stopPercent} %.`;
  return [cautionWords, stopWords].filter(Boolean).join(' ');
}

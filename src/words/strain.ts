import { loadsToHang, type StrainLevels, strainVerdict } from '../engine/bench/strain.ts';

/**
 * The heaviest load to hang, and from which on a load is only computed. `names` and `percent` by load, the lightest
 * first; empty where every load stays within.
 */
export function strainWords(
  names: readonly string[],
  percent: readonly number[],
  levels: StrainLevels,
): string {
  const first = loadsToHang(percent, levels);
  if (first === percent.length) return '';
  const strains = (load: number) => `strains the surface by ${besideLevel(percent[load], levels)} %`;
  const most =
    first === 0
      ? `Hang none of these: even ${names[0]} ${strains(0)}`
      : `Hang no more than ${names[first - 1]}: ${names[first]} ${strains(first)}`;
  const stop = percent.findIndex((one) => strainVerdict(one, levels) === 'stop');
  if (stop === first) return `${most}, past the stop level of ${levels.stopPercent} %.${onlyComputed}`;
  const caution = `${most}, past the caution level of ${levels.cautionPercent} %.${onlyComputed}`;
  return stop < 0
    ? caution
    : `${caution} ${names[stop]} ${strains(stop)}, past the stop level of ${levels.stopPercent} %.`;
}

/** Told finer where a hundredth would not tell it from the level that it is past. */
function besideLevel(percent: number, { cautionPercent, stopPercent }: StrainLevels): string {
  const told = percent.toFixed(2);
  const isHidden = [cautionPercent, stopPercent].some((level) => percent > level && Number(told) <= level);
  return isHidden ? percent.toFixed(3) : told;
}

const onlyComputed = ' Heavier ones are only computed.';

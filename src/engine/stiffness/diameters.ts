import type { FitBlank } from './request.ts';

/**
 * Outside diameter at a station: linear between measured ones, taken on beyond them by the taper of the
 * nearest two. One alone scales a common taper, and where none was measured that taper stands in: 1.7 mm at
 * the tip, 2.9 mm more for every metre (common practice, no source).
 */
export function outsideDiameterAt({ diameters = [] }: FitBlank, fromTipM: number): number {
  if (diameters.length === 0) return commonTaper(fromTipM);
  if (diameters.length === 1) {
    const [only] = diameters;
    return (only.outsideM * commonTaper(fromTipM)) / commonTaper(only.fromTipM);
  }
  let i = 1;
  while (i < diameters.length - 1 && diameters[i].fromTipM < fromTipM) i++;
  const [a, b] = [diameters[i - 1], diameters[i]];
  const taper = (b.outsideM - a.outsideM) / (b.fromTipM - a.fromTipM);
  const value = a.outsideM + taper * (fromTipM - a.fromTipM);
  return Math.max(value, 0.6 * Math.min(a.outsideM, b.outsideM));
}

function commonTaper(fromTipM: number): number {
  return 0.0017 + 0.0029 * fromTipM;
}

/**
 * What thread and finish add to the blank: mass everywhere, stiffness as a range.
 *
 * Mass: thread of laid width d is a bundle of nylon filaments, ρ π d²/4 times its packing a metre; finish is the
 * coats' volume (coat-volume.ts) times its density. Stiffness, low end: the sleeve of soaked thread alone,
 * E π (Do⁴ − Di⁴)/64. High end: the guide's metal foot bonded to the blank as well, the two bending as one section,
 * EI = EI₀ + E_f w h³/12 + EA₀ EA_f/(EA₀ + EA_f) e², e the distance of their axes (transformed section, any textbook
 * of beams), EA₀ = 8 EI₀/D² as of a thin tube. A real foot lies between: finish is soft and lets it slip.
 * Nylon 1140 kg/m³; cured epoxy 1150 kg/m³ and 3 GPa, steel 200 GPa: handbook values, from memory. Packing 0.7:
 * textile rule of thumb, from memory. Foot 1.2 mm wide, 0.8 mm high over the whole wrap, no ramp: common practice, no source.
 */

import type { Wrap } from '../wraps/plan-wraps.ts';
import { coatVolumeM3, commonFootHeightM } from './coat-volume.ts';

interface DressingChoices {
  laidWidthM: number;
  coatThicknessM: number;
  /** Coats on the finished rod. */
  coats: number;
  /** Of a foot, beside which finish fills in; left out: as common. */
  footHeightM?: number;
}
/** One wrap's thread and finish on the blank. */
export interface Dressing {
  fromTipM: number;
  toTipM: number;
  threadKg: number;
  finishKg: number;
  /** Stiffness of the soaked sleeve, added to the blank's. */
  sleeveNm2: number;
  outsideM: number;
  overFoot: boolean;
  /** Of the rod's guides, from the tip; left out where the wrap holds none. */
  guide?: number;
}

export const dressingMaterial = {
  nylonKgPerM3: 1140,
  packing: 0.7,
  finishKgPerM3: 1150,
  finishPa: 3e9,
  steelPa: 200e9,
  footWidthM: 0.0012,
} as const;

export function dressWraps(wraps: readonly Wrap[], choices: DressingChoices): Dressing[] {
  const { laidWidthM, coatThicknessM, coats, footHeightM } = choices;
  const threadKgPerM =
    dressingMaterial.nylonKgPerM3 * dressingMaterial.packing * (Math.PI / 4) * laidWidthM ** 2;
  return wraps.map((wrap) => {
    const coat = (first: boolean) =>
      coatVolumeM3({ wraps: [wrap], laidWidthM, thicknessM: coatThicknessM, footHeightM, first });
    const volumeM3 = coats === 0 ? 0 : coat(true) + (coats - 1) * coat(false);
    const sleeveM = wrap.outsideM + 2 * (laidWidthM + coats * coatThicknessM);
    return {
      fromTipM: wrap.fromTipM,
      toTipM: wrap.toTipM,
      threadKg: threadKgPerM * (wrap.threadM + wrap.trimThreadM),
      finishKg: dressingMaterial.finishKgPerM3 * volumeM3,
      sleeveNm2: (dressingMaterial.finishPa * Math.PI * (sleeveM ** 4 - wrap.outsideM ** 4)) / 64,
      outsideM: wrap.outsideM,
      overFoot: wrap.overFoot,
      guide: wrap.guide,
    };
  });
}

/** Blank and bonded foot bending as one section, in the guides' plane; `blankNm2` the blank's own there. */
export function withBondedFootNm2(blankNm2: number, outsideM: number, heightM = commonFootHeightM): number {
  const { steelPa, footWidthM } = dressingMaterial;
  const blankN = (8 * blankNm2) / outsideM ** 2;
  const footN = steelPa * footWidthM * heightM;
  const apartM = (outsideM + heightM) / 2;
  return (
    blankNm2 +
    (steelPa * footWidthM * heightM ** 3) / 12 +
    ((blankN * footN) / (blankN + footN)) * apartM ** 2
  );
}

/** A diameter that the others contradict is named and left out: believed, it would bend the blank's first guess. */

import { type OddDiameter, oddDiameter } from '../bench/odd-diameter.ts';
import type { Finding } from '../finding.ts';
import { said } from '../finding.ts';
import { knownZones } from './prior.ts';
import type { FitBlank } from './request.ts';

export function oddOfBlank(blank: FitBlank): OddDiameter | undefined {
  const joints = (knownZones(blank) ?? []).map(({ fromTipM, toTipM }) => (fromTipM + toTipM) / 2);
  return oddDiameter(blank.diameters ?? [], joints, blank.lengthM);
}

export function withoutDiameter(blank: FitBlank, { index }: OddDiameter): FitBlank {
  return { ...blank, diameters: blank.diameters?.filter((_, i) => i !== index) };
}

export function sayOdd({ diameters = [] }: FitBlank, { index, toldM }: OddDiameter): Finding {
  const { fromTipM, outsideM } = diameters[index];
  const mm = (lengthM: number) => `${(1000 * lengthM).toFixed(2)} mm`;
  return said(
    `blank.diameters[${index}].outsideM`,
    `${mm(outsideM)} at ${fromTipM.toFixed(3)} m does not lie on this blank: the other diameters say about ${mm(toldM)} there. It is left out; measure it again`,
  );
}

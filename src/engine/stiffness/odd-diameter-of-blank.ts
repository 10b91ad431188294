/** A diameter that the others contradict is named and left out: believed, it would bend the blank's first guess. */

import { type OddDiameter, oddDiameter } from '../bench/odd-diameter.ts';
import type { Finding } from '../finding.ts';
import { fitFound } from './fit-kinds.ts';
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
  const path = `blank.diameters[${index}].outsideM`;
  return fitFound(path, 'fit/diameter-odd', { fromTipM, outsideM, toldM });
}

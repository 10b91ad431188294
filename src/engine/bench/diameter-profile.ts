import { type AssembledBlank, stationOf } from './assemble.ts';
import type { Diameter, Section } from './bench.ts';

export interface DiameterRow {
  fromTipM: number;
  outsideM: number;
}

/**
 * Outside diameters along the assembled blank, tip first, as they can be seen: a male end hidden in a ferrule
 * is left out. Two readings within a millimetre of each other (either side of a seat line) become their mean,
 * since a table has one value per station.
 */
export function diameterProfile(sections: readonly Section[], blank: AssembledBlank): DiameterRow[] {
  const rows = sections.flatMap((section, index) => {
    const { visible } = blank.sections[index];
    return section.diameters
      .map(({ fromOwnTipM, outsideM }) => ({ fromTipM: stationOf(blank, index, fromOwnTipM), outsideM }))
      .filter(({ fromTipM }) => fromTipM >= visible.fromTipM - 1e-9 && fromTipM <= visible.toTipM + 1e-9);
  });
  return mergeClose(rows.sort((a, b) => a.fromTipM - b.fromTipM));
}

/** Linear between rows, constant outside; undefined where nothing was measured. */
export function diameterAt(profile: readonly DiameterRow[], fromTipM: number): number | undefined {
  const next = profile.findIndex((row) => row.fromTipM >= fromTipM);
  if (next <= 0) return profile.at(next)?.outsideM;
  const [a, b] = [profile[next - 1], profile[next]];
  const share = (fromTipM - a.fromTipM) / (b.fromTipM - a.fromTipM);
  return a.outsideM + share * (b.outsideM - a.outsideM);
}

/** The row measured nearest to a station of the assembled blank. */
export function diameterRowAt(
  sections: readonly Section[],
  blank: AssembledBlank,
  fromTipM: number,
): Diameter | undefined {
  return sections
    .flatMap(({ diameters }, index) =>
      diameters.map((row) => ({ row, offM: Math.abs(stationOf(blank, index, row.fromOwnTipM) - fromTipM) })),
    )
    .sort((a, b) => a.offM - b.offM)[0]?.row;
}

function mergeClose(rows: readonly DiameterRow[]): DiameterRow[] {
  const merged: DiameterRow[] = [];
  for (const row of rows) {
    const last = merged.at(-1);
    if (last && row.fromTipM - last.fromTipM < 1e-3) last.outsideM = (last.outsideM + row.outsideM) / 2;
    else merged.push({ ...row });
  }
  return merged;
}

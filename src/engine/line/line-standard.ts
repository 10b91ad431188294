/**
 * The line-mass standard for single-handed fly lines: mass of the first 30 ft, the level tip left out, in
 * grains. From several independent reproductions that agree; the association's own sheet was not seen. Grams
 * are never stored: published gram columns are rounded inconsistently, so they are converted from the grains,
 * 1 gr = 64.79891 mg exactly (international yard and pound agreement of 1959).
 */
export interface StandardLine {
  number: number;
  lowGrains: number;
  targetGrains: number;
  highGrains: number;
}

export const kgPerGrain = 64.79891e-6;

export const standardLines: readonly StandardLine[] = (
  [
    [54, 60, 66],
    [74, 80, 86],
    [94, 100, 106],
    [114, 120, 126],
    [134, 140, 146],
    [152, 160, 168],
    [177, 185, 193],
    [202, 210, 218],
    [230, 240, 250],
    [270, 280, 290],
    [318, 330, 342],
    [368, 380, 392],
    [435, 450, 465],
    [485, 500, 515],
    [535, 550, 565],
  ] as const
).map(([lowGrains, targetGrains, highGrains], index) => ({
  number: index + 1,
  lowGrains,
  targetGrains,
  highGrains,
}));

/** Where a mass of the first 30 ft stands in the table; 0 below the first line, 16 above the last. */
type LinePlace = { kind: 'in'; number: number } | { kind: 'between'; lower: number; upper: number };

/** A gap between two bands is said as such, never rounded to a number. */
export function placeOfLine(massKg: number): LinePlace {
  const grains = massKg / kgPerGrain;
  // a band's own limits belong to it, whatever the conversion rounds
  const slack = 1e-9 * grains;
  const inside = standardLines.find(
    ({ lowGrains, highGrains }) => grains >= lowGrains - slack && grains <= highGrains + slack,
  );
  if (inside) return { kind: 'in', number: inside.number };
  const lower = standardLines.findLast(({ highGrains }) => highGrains < grains)?.number ?? 0;
  return { kind: 'between', lower, upper: lower + 1 };
}

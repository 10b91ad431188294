/**
 * Sheets of labels as stationers sell them, by their measures alone: common practice, no source, from memory. The
 * labels of a sheet touch from top to bottom, have a gap from left to right, and stand in the middle of the page.
 */

export interface LabelStock {
  paper: 'a4' | 'letter';
  across: number;
  down: number;
  widthM: number;
  heightM: number;
  /** From one label to the next beside it. */
  gapM: number;
}

const mm = (length: number) => length / 1000;
const inch = (length: number) => length * 0.0254;

const a4 = (across: number, down: number, width: number, height: number, gap: number): LabelStock => {
  return { paper: 'a4', across, down, widthM: mm(width), heightM: mm(height), gapM: mm(gap) };
};
const letter = (across: number, down: number, width: number, height: number, gap: number): LabelStock => {
  return { paper: 'letter', across, down, widthM: inch(width), heightM: inch(height), gapM: inch(gap) };
};

/** By what the record keeps; the smallest first. */
export const labelStocks = {
  'a4-65': a4(5, 13, 38.1, 21.2, 2.5),
  'a4-21': a4(3, 7, 63.5, 38.1, 2.5),
  'a4-14': a4(2, 7, 99.1, 38.1, 2.5),
  'letter-80': letter(4, 20, 1.75, 0.5, 0.3),
  'letter-30': letter(3, 10, 2.625, 1, 0.125),
  'letter-20': letter(2, 10, 4, 1, 0.1875),
  'letter-10': letter(2, 5, 4, 2, 0.1875),
} as const satisfies Record<string, LabelStock>;
export type LabelStockId = keyof typeof labelStocks;

export const labelStockNames: Record<LabelStockId, string> = {
  'a4-65': '38.1 × 21.2 mm, 65 on A4',
  'a4-21': '63.5 × 38.1 mm, 21 on A4',
  'a4-14': '99.1 × 38.1 mm, 14 on A4',
  'letter-80': '1 3/4 × 1/2 in, 80 on Letter',
  'letter-30': '2 5/8 × 1 in, 30 on Letter',
  'letter-20': '4 × 1 in, 20 on Letter',
  'letter-10': '4 × 2 in, 10 on Letter',
};

export interface LabelPlace {
  page: number;
  leftM: number;
  topM: number;
}

/** Places row after row from the first free one of a begun sheet, counted from 1; then on whole sheets. */
export function labelPlaces(
  { across, down, widthM, heightM, gapM }: LabelStock,
  page: { widthM: number; heightM: number },
  { firstFree, count }: { firstFree: number; count: number },
): LabelPlace[] {
  const leftM = (page.widthM - across * widthM - (across - 1) * gapM) / 2;
  const topM = (page.heightM - down * heightM) / 2;
  return Array.from({ length: count }, (_, k) => {
    const place = firstFree - 1 + k;
    const inPage = place % (across * down);
    return {
      page: Math.floor(place / (across * down)),
      leftM: leftM + (inPage % across) * (widthM + gapM),
      topM: topM + Math.floor(inPage / across) * heightM,
    };
  });
}

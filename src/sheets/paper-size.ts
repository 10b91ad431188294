export type PaperName = 'a4' | 'letter';
export interface PaperSize {
  widthMm: number;
  heightMm: number;
}
/** Lying, since strips run along the longer side. ISO 216; letter 11 × 8 1/2 in. */
export const lyingPaper: Record<PaperName, PaperSize> = {
  a4: { widthMm: 297, heightMm: 210 },
  letter: { widthMm: 279.4, heightMm: 215.9 },
};
export const standingPaper: Record<PaperName, PaperSize> = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
};
/** Wide enough for common printers' blank edge even where a page is stretched by the largest correction. */
export const marginMm = 14;

/** What strips may be printed on beside the shop's sheets: longer sheets, or a roll cut to the builder's own length. */
export type StripPaper = PaperName | 'legal' | 'tabloid' | 'a3' | 'roll';
export interface Roll {
  widthM: number;
  /** Longest print; undefined: as long as the longest section. */
  lengthM?: number;
}
export interface StripsOn {
  paper: StripPaper;
  /** Of a paper that is a roll. */
  roll?: Roll;
}
export const longSheets: Record<Exclude<StripPaper, 'roll'>, PaperSize> = {
  ...lyingPaper,
  legal: { widthMm: 355.6, heightMm: 215.9 },
  tabloid: { widthMm: 431.8, heightMm: 279.4 },
  a3: { widthMm: 420, heightMm: 297 },
};

export const usualRollM = 0.21;
/** The rules at the foot of a print want their room; a page of a PDF ends at 5 m. */
export const rollLimitsM = { width: [0.16, 1.6], length: [0.2, 5] } as const;

/** What else is printed beside strips on such paper. */
export function usualSheet(paper: StripPaper): PaperName {
  return paper === 'letter' || paper === 'legal' || paper === 'tabloid' ? 'letter' : 'a4';
}

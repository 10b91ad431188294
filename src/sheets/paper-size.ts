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

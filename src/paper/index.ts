export { type FontFiles, slicesOf } from './font-files.ts';
export { missingWords } from './missing-letters.ts';
export { type PdfOptions, type Printed, pointsPerMm, sheetsPdf } from './sheet-pdf.ts';

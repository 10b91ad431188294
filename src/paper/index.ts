export { type PdfOptions, pointsPerMm, sheetsPdf } from './sheet-pdf.ts';

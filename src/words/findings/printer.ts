import type { Sentences } from './sentences.ts';

/** What a printed rule tells of the print. */
export interface PrinterKinds {
  'print/rule-off': { measuredM: number };
}

export const printerSentences: Sentences<PrinterKinds> = {
  'print/rule-off': ({ measuredM }, w) =>
    `Print at 100 % (actual size, no fit to page). The 100 mm rule measured ${w.fine(measuredM)}: over 3 % off is a print setting. Did you measure the 4 in rule?`,
};

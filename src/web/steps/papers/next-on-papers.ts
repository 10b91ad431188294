import type { Row } from '../../../record/document.ts';
import { numberOf, textOf } from '../../read/values.ts';

export interface NextOnPapers {
  words: string;
  /** Path key of the field to go to. */
  at?: string;
}

export interface PapersState {
  title: string | undefined;
  /** The last coat that is planned is on. */
  isFinished: boolean;
  parts: readonly Row[];
  /** When the customer took the quote. */
  acceptedAt: string | undefined;
  inspection: readonly Row[];
  /** The delivery papers are on paper. */
  papersPrinted: boolean;
  deliveredAt: string | undefined;
}

/** First the quote; from the last coat on, inspection and delivery, quoted or not. */
export function nextOnPapers(state: PapersState): NextOnPapers {
  const { isFinished, inspection, deliveredAt } = state;
  if (deliveredAt) return { words: 'Delivered; the record is kept.' };
  if (inspection.length > 0) return nextOfDelivery(state);
  if (isFinished) return { words: 'Lay out the inspection list.', at: 'inspection/new' };
  return nextOfQuote(state);
}

function nextOfDelivery({ inspection, title, papersPrinted }: PapersState): NextOnPapers {
  const failed = inspection.find((row) => textOf(row, 'verdict') === 'not good');
  if (failed)
    return { words: 'Something failed. Fix it, and look again.', at: `inspection/${failed.id}/verdict` };
  const open = inspection.find((row) => !textOf(row, 'verdict'));
  if (open)
    return { words: 'Look at every point and give its verdict.', at: `inspection/${open.id}/verdict` };
  if (!title) return { words: 'Give the rod a title: it goes on label and papers.', at: 'about/-/title' };
  if (papersPrinted)
    return {
      words: 'Hand the rod over, have the papers signed, and enter the day.',
      at: 'delivery/-/deliveredAt',
    };
  return { words: 'Print the delivery papers, and have them signed.', at: 'delivery/-/deliveredTo' };
}

function nextOfQuote({ parts, acceptedAt }: PapersState): NextOnPapers {
  const lines = parts.filter((row) => numberOf(row, 'count') !== 0);
  const unpriced = lines.filter((row) => numberOf(row, 'unitPrice') === undefined);
  if (acceptedAt)
    return { words: 'Order the parts; note lot and dye numbers as they come in.', at: 'parts/new' };
  if (lines.length === 0) {
    return {
      words: 'Take the parts from the build, put prices to them, and print the quote.',
      at: 'quoteLines/new',
    };
  }
  if (unpriced.length > 0) {
    return {
      words: `Put prices to the parts: ${unpriced.length} of ${lines.length} have none yet. Then print the quote.`,
      at: `quoteLines/${unpriced[0].id}/unitPrice`,
    };
  }
  return { words: 'Print the quote; when the customer agrees, note the day.', at: 'quote/-/quotedAt' };
}

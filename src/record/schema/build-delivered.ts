/** What was printed, ticked off, offered, looked at and handed over. */
import {
  attachments,
  choice,
  type DocumentSchema,
  flag,
  instant,
  money,
  order,
  real,
  tags,
  text,
} from './field-kinds.ts';
import { quoteRates } from './habits.ts';

export const deliveredCollections: DocumentSchema = {
  /** Every sheet printed, tied to the frozen revision it came from. */
  prints: {
    single: false,
    fields: {
      sheet: text(60),
      paper: choice('a4', 'letter'),
      revision: text(80),
      printedAt: instant,
      engineVersion: text(40),
      gone: flag,
    },
  },
  /** Pieces of work ticked off at the bench, one row each. */
  benchDone: { single: false, fields: { task: text(80), doneAt: instant, gone: flag } },
  tags,
  attachments,
  /** What went into the rod, with the numbers by which it can be had again. */
  parts: {
    single: false,
    fields: {
      order,
      what: text(200),
      stage: choice('blank', 'handle', 'guides', 'wraps', 'finish', 'other'),
      count: real(0, 10_000),
      lot: text(80),
      dye: text(80),
      note: text(1000),
      gone: flag,
    },
  },
  /** What the rod is offered for. Money counts the currency's smallest unit. */
  quote: {
    single: true,
    fields: {
      wish: text(4000),
      ...quoteRates,
      note: text(4000),
      quotedAt: instant,
      acceptedAt: instant,
      depositPaidAt: instant,
    },
  },
  quoteLines: {
    single: false,
    fields: {
      order,
      what: text(200),
      count: real(0, 10_000),
      unitPrice: money,
      /** Ordered beyond what the rod takes. */
      spare: real(0, 10_000),
      source: text(200),
      gone: flag,
    },
  },
  quoteHours: {
    single: false,
    fields: { order, stage: text(80), hours: real(0, 10_000), gone: flag },
  },
  /** The list before delivery: what was found, beside its tolerance. */
  inspection: {
    single: false,
    fields: {
      order,
      item: text(200),
      tolerance: text(200),
      found: text(200),
      verdict: choice('good', 'not good', 'does not apply'),
      gone: flag,
    },
  },
  delivery: {
    single: true,
    fields: {
      inspectedBy: text(120),
      inspectedAt: instant,
      deliveredTo: text(200),
      deliveredAt: instant,
      careSheetGiven: flag,
      note: text(4000),
    },
  },
};

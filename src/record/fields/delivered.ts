/** What was printed, ticked off, looked at, used, offered and handed over. */
import { inspectionPoints } from '../../engine/delivery/inspection.ts';
import {
  choice,
  count,
  day,
  flag,
  habits,
  instant,
  many,
  money,
  order,
  percent,
  real,
  single,
  text,
  trade,
} from './declare.ts';

export const paperNames = { a4: 'A4', letter: 'Letter' } as const;
/** What strips may be printed on beside the shop's sheets. */
export const stripPaperNames = {
  ...paperNames,
  legal: 'Legal, 14 in long',
  tabloid: '11 × 17 in',
  a3: 'A3',
  roll: 'a roll, or a length of your own',
} as const;

/** Every sheet printed, tied to the frozen revision it came from. */
export const prints = many('Print', {
  sheet: text('sheet', 60),
  paper: choice('paper', stripPaperNames),
  revision: text('revision', 80),
  printedAt: instant('printed'),
  engineVersion: text('version of Fairbend', 40),
});

/** Pieces of work ticked off at the bench, one row each. */
export const benchDone = many('Work at the bench', { task: text('task', 80), doneAt: instant('done') });

/** Time spent, logged by one tap. */
export const loggedHours = many('Hours', {
  order: order(),
  stage: text('stage', 40),
  minutes: real('time', [0, 10_000], { unit: 'min' }),
  loggedAt: instant('logged'),
});

/** What went into the rod, with the numbers by which it can be had again. */
export const parts = many('Part', {
  order: order(),
  what: text('what it is', 200),
  stage: choice('goes into', ['blank', 'handle', 'guides', 'wraps', 'finish', 'other'], {
    folded: true,
    usual: 'other',
  }),
  count: real('how many', [0, 10_000]),
  lot: text('lot number', 80),
  dye: text('dye number', 80),
  note: text('note', 1000),
});

/** How a rod is priced; a build's own word stands before the shop's. */
export const quoteRates = habits({
  hourlyRate: money('an hour of work'),
  overheadPercent: percent('overheads on work', [0, 1000], { usual: 0 }),
  reservePercent: percent('reserve', [0, 1000], { usual: 5, origin: trade() }),
  depositPercent: percent('deposit', [0, 100], { usual: 40, origin: trade() }),
  taxPercent: percent('tax', [0, 100], { usual: 0 }),
  validDays: count('quote valid for', [0, 3650], { unit: 'days', usual: 30, origin: trade() }),
  leadWeeks: real('delivery in', [0, 520], { unit: 'weeks', usual: 8, origin: trade() }),
});

/** What the rod is offered for. */
export const quote = single('Quote', {
  wish: text('what the customer wants', 4000, { lines: 2 }),
  ...quoteRates,
  note: text('note', 4000),
  quotedAt: day('quoted on'),
  acceptedAt: day('accepted on'),
  depositPaidAt: day('deposit paid on'),
});

export const quoteLines = many('Line of the quote', {
  order: order(),
  what: text('what it is', 200),
  count: real('how many', [0, 10_000]),
  unitPrice: money('price of one'),
  /** Ordered beyond what the rod takes. */
  spare: real('spares', [0, 10_000]),
  source: text('from whom', 200),
});

export const quoteHours = many('Hours of the quote', {
  order: order(),
  stage: text('work', 80),
  hours: real('time', [0, 10_000], { unit: 'h' }),
});

/** The list before delivery: what was found, beside its tolerance. A usual point is said by src/words/inspection. */
export const inspection = many('Point of the inspection', {
  order: order(),
  point: choice('point', inspectionPoints),
  item: text('what is looked at', 200),
  tolerance: text('tolerance', 200),
  found: text('found', 200),
  verdict: choice('verdict', ['good', 'not good', 'does not apply'], {
    folded: true,
    empty: 'not looked at',
  }),
});

export const delivery = single('Delivery', {
  inspectedBy: text('inspected by', 120),
  inspectedAt: day('inspected on'),
  deliveredTo: text('handed to', 200),
  deliveredAt: day('handed over on'),
  careSheetGiven: flag('the care sheet went with it, and its cautions were talked over'),
  note: text('note', 4000, { lines: 2 }),
});

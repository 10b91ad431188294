import type { commonHours } from '../engine/quote/quote.ts';

/** What the hours of a quote are for, as they are laid out; the builder may change it. */
export const workWords: Record<keyof typeof commonHours, string> = {
  talk: 'Talk, quote, order',
  'check-in': 'Check-in, measuring, spine',
  handle: 'Handle',
  guides: 'Guides prepared',
  layout: 'Layout, tape, load test',
  wraps: 'Wraps',
  finish: 'Finish',
  delivery: 'Inspection, record, packing',
};

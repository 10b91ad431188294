import type { DocumentState } from './operation.ts';
import { readRows, readSingle } from './read-values.ts';

/** What the papers that leave with a rod may say of it: nothing of prices, hours, rates or notes. */
export interface DeliveredWords {
  customer: string;
  lineWeight: string;
  /** Instant it was handed over. */
  deliveredAt: string | undefined;
  /** What went into it: `4 × snake guide 1/0`. */
  madeOf: string[];
}

export function readDelivered(state: DocumentState): DeliveredWords {
  const about = readSingle(state, 'about');
  return {
    customer: about.text('customer') ?? '',
    lineWeight: about.text('lineWeight') ?? '',
    deliveredAt: readSingle(state, 'delivery').text('deliveredAt'),
    madeOf: readRows(state, 'parts').flatMap((row) => {
      const what = row.text('what');
      const count = row.number('count') ?? 1;
      return what === undefined ? [] : [count === 1 ? what : `${count} × ${what}`];
    }),
  };
}

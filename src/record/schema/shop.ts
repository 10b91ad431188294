import { rackKindIds } from '../../engine/kinds/guide-kinds.ts';
import { choice, count, type DocumentSchema, flag, length, order, text } from './field-kinds.ts';
import {
  finishHabits,
  guideNumbers,
  handleHabits,
  layoutHabits,
  quoteRates,
  sortingHabits,
  wrapHabits,
} from './habits.ts';

/** What holds for every build of the shop. */
export const shopSchema: DocumentSchema = {
  settings: {
    single: true,
    fields: {
      /** Decides what a bare number means. */
      unitSystem: choice('inch', 'mm'),
      tapeStep: choice('1 mm', '1/8 in', '1/16 in', '1/32 in'),
      paper: choice('a4', 'letter'),
      colours: choice('auto', 'day', 'night'),
    },
  },
  /** How this shop works where a build says nothing of its own. */
  wraps: { single: true, fields: wrapHabits },
  finish: { single: true, fields: finishHabits },
  handle: { single: true, fields: handleHabits },
  sorting: { single: true, fields: sortingHabits },
  layout: { single: true, fields: layoutHabits },
  /** The shop's own guides, a row for each kind and size in the drawers. */
  rack: {
    single: false,
    fields: {
      order,
      kind: choice(...rackKindIds),
      name: text(120),
      ...guideNumbers,
      /** Whether its numbers were measured here or stand on the packet; an empty one is typical of the size. */
      numbersAre: choice('measured', 'stated'),
      onHand: count(0, 100_000),
      note: text(400),
      gone: flag,
    },
  },
  /** How this shop reckons, and what stands at the head of its papers. */
  rates: {
    single: true,
    fields: {
      shopName: text(200),
      shopAddress: text(1000),
      /** Three letters of ISO 4217. */
      currency: text(3),
      ...quoteRates,
      terms: text(4000),
    },
  },
  /** What the printed 100 mm and 4 in rules measured, per printer and paper; the next print is corrected by it. */
  printers: {
    single: false,
    fields: {
      name: text(120),
      paper: choice('a4', 'letter'),
      ruleAcross: length(0.05, 0.2),
      ruleAlong: length(0.05, 0.2),
      gone: flag,
    },
  },
};

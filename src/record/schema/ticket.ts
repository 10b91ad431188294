import {
  attachments,
  choice,
  count,
  type DocumentSchema,
  flag,
  instant,
  length,
  money,
  real,
  tags,
  text,
} from './field-kinds.ts';

/** A repair, with or without a build on record. */
export const ticketSchema: DocumentSchema = {
  about: {
    single: true,
    fields: {
      /** What came in: the rod as anybody would recognise it. */
      title: text(200),
      customer: text(200),
      contact: text(200),
      lineWeight: text(60),
      note: text(20_000),
      createdAt: instant,
      demo: flag,
      /** The build on record that it is. */
      build: text(60),
    },
  },
  job: {
    single: true,
    fields: {
      broken: choice('tip', 'guide', 'section', 'ferrule', 'wrap', 'seat', 'grip', 'other'),
      words: text(4000),
      price: money,
      promisedFor: instant,
      doneAt: instant,
      done: text(4000),
      minutes: real(0, 10_000),
      handedOverAt: instant,
    },
  },
  /** What the helpers for a broken tip, guide or section ask for. */
  damage: {
    single: true,
    fields: {
      /** Blank gone from the tip. */
      lost: length(0, 3),
      outsideAtBreak: length(0, 0.05),
      /** Of the next millimetres down, so that the taper there is known. */
      outsideBelow: length(0, 0.05),
      belowBreak: length(0, 3),
      rodLength: length(),
      /** Guides from the old tip down, as typed. */
      stations: text(2000),
      guide: count(1, 40),
      section: count(1, 12),
      /** Of the section that replaces it. */
      newLength: length(),
      newOverlap: length(0, 1),
    },
  },
  tags,
  attachments,
};

/** A repair, with or without a build on record. */
import { about as ofBuild } from './about.ts';
import { calliper, choice, count, day, length, money, real, rule, single, text } from './declare.ts';

const { customer, lineWeight, note, createdAt, demo } = ofBuild.fields;

export const about = single('Repair', {
  /** As anybody would recognise it. */
  title: text('the rod', 200, { empty: 'green 5-weight in four pieces' }),
  customer,
  contact: text('how to reach them', 200),
  lineWeight,
  note,
  createdAt,
  demo,
  build: text('build on record', 60),
});

export const job = single('Repair', {
  broken: choice(
    'what is broken',
    {
      tip: 'the tip broke off',
      guide: 'a guide',
      section: 'a section',
      ferrule: 'a joint',
      wrap: 'a wrap or its finish',
      seat: 'the reel seat',
      grip: 'the grip',
      other: 'something else',
    },
    { folded: true, empty: 'pick one' },
  ),
  words: text('in the customer’s words', 4000, { lines: 2 }),
  price: money('price'),
  promisedFor: day('promised for'),
  doneAt: day('done on'),
  done: text('what was done', 4000, {
    lines: 2,
    empty: 'new tip-top 4.5/64, guides 1 and 2 moved, thread and its lot',
  }),
  minutes: real('time it took', [0, 10_000], { unit: 'min' }),
  handedOverAt: day('handed over on'),
});

/** What the helpers for a broken tip, guide or section ask for. */
export const damage = single('Damage', {
  lost: length('blank gone from the tip', [0, 3]),
  outsideAtBreak: calliper('diameter at the break', [0, 0.05]),
  /** Of the next millimetres down, so that the taper there is known. */
  outsideBelow: calliper('diameter further down', [0, 0.05]),
  belowBreak: length('how far further down', [0, 3]),
  rodLength: length('length of the rod before'),
  stations: text('guides from the old tip, down the rod', 2000),
  guide: count('which guide, counted from the tip', [1, 40]),
  section: count('which section, counted from the tip', [1, 12]),
  newLength: length('length of the new one'),
  newOverlap: rule('its overlap, if it differs', [0, 1]),
});

/** The guides: those of the rod, those in the bag as they were looked at, and the shop's own in their drawers. */

import { sortingDefaults } from '../../engine/guides/bag-sorting.ts';
import { guideKinds } from '../../engine/kinds/guide-kinds.ts';
import {
  angle,
  calliper,
  choice,
  count,
  flag,
  habits,
  instant,
  length,
  many,
  mass,
  namesOf,
  order,
  ours,
  percent,
  real,
  row,
  rule,
  single,
  text,
  trade,
} from './declare.ts';

/** A guide's own numbers, as measured, or as its packet states them. */
export const guideNumbers = {
  size: text('size', 40, { empty: '1/0, 12 mm' }),
  wire: calliper('wire', [0, 0.01], { empty: 'unknown' }),
  ringHeight: calliper('height of the ring’s middle', [0, 0.1], {
    empty: 'unknown',
    hint: 'Height over all, less the wire and half the opening.',
  }),
  foot: rule('length over all feet', [0, 0.2], { empty: 'unknown' }),
  mass: mass('mass', [0, 0.1], {
    empty: 'unknown',
    hint: 'Weigh ten together and divide.',
    likely: [0.00001, 0.02],
  }),
  opening: calliper('clear opening', [0, 0.1], { empty: 'unknown' }),
  footWidth: calliper('width of a foot', [0, 0.05], { empty: 'unknown' }),
  feet: count('feet', [1, 2], { empty: '1 or 2' }),
  oneFoot: rule('length of one foot', [0, 0.1], { empty: 'unknown' }),
};

/** What is looked at and done on one guide before it is bound on. */
const looks = {
  platingWhole: flag('plating whole'),
  notTwisted: flag('not twisted'),
  ringSmooth: flag('ring smooth'),
  footRamped: flag('foot ramped'),
  footFlat: flag('underside flat'),
  noBurr: flag('no burr'),
};

/** From the tip down; the tip-top has kind 'tip-top' and stands at the datum. */
export const guides = many('Guide', {
  order: order('place on the rod'),
  kind: choice('kind', namesOf(guideKinds.filter(({ place }) => place !== 'keeper')), { folded: true }),
  ...guideNumbers,
  /** Its numbers were written here then, and stay. */
  fromRack: text('taken from the shop’s guides', 40),
  ...looks,
  wrapLength: rule('own wrap', [0, 0.2], { empty: 'by section' }),
  /** The chosen one. */
  station: length('mark', [0, 10], { fineness: 'mark' }),
  pinned: flag('stays where it is'),
  /** Of its foot, from the top towards the side that the spiral goes. */
  around: angle('round the blank from the top', { empty: 'as the spiral turns' }),
  ringBeside: calliper('ring beside its foot', [-0.05, 0.05], {
    empty: 'over its foot',
    hint: 'Toward the side that the spiral goes.',
  }),
});

/** Why a guide is put aside, by what the record keeps. */
export const asideReasons = {
  plating: 'cracked plating',
  twisted: 'twisted',
  'rough-ring': 'rough ring',
  'loose-ring': 'loose ring',
  'not-round': 'opening not round',
  'short-foot': 'foot too short',
} as const;

export const bag = many('Guide in the bag', {
  order: order('place in the bag'),
  size: guideNumbers.size,
  straightness: choice('straightness by eye', { straight: 'straight', slight: 'slightly out', bent: 'bent' }),
  /** Measured on a scan. */
  feetOffset: calliper('feet beside each other', [0, 0.02]),
  feetAngle: angle('angle between the feet'),
  length: rule('length', [0, 0.2]),
  scan: text('scan', 80),
  onScan: count('number on the scan', [1, 10_000]),
  scanRow: row('kept scan', 'scans'),
  ...looks,
  /** The eye's verdict, whatever its feet are like. */
  reject: text('put aside for', 200, { names: asideReasons, empty: 'keep it' }),
});

/** Pictures that guides were measured on; a discarded one is `gone`, and what was read on it stays in the bag. */
export const scans = many('Scan of the bag', {
  order: order(),
  attachment: row('picture', 'attachments'),
  takenBy: choice('taken with', { flatbed: 'flatbed', phone: 'telephone' }),
  dpi: real('read with', [1, 10_000], { unit: 'dpi' }),
  readAt: instant('read'),
});

const straightEnough = habits({
  ofDiameterPercent: percent('tolerance, of the blank’s diameter', [0.1, 100], {
    usual: 100 * sortingDefaults.ofDiameter,
    origin: ours,
  }),
  mostTolerances: real('not used past', [0.1, 20], {
    unit: '× tolerance',
    usual: sortingDefaults.mostTolerances,
    origin: ours,
  }),
  usualOffset: calliper('feet beside each other, slightly out at', [0.00001, 0.005], {
    usual: sortingDefaults.usualOffsetM,
    origin: trade(0.0002, 0.0003),
  }),
  usualAngle: angle('angle between the feet, slightly out at', {
    usual: sortingDefaults.usualAngleRad,
    origin: trade((2 * Math.PI) / 180, (3 * Math.PI) / 180),
  }),
  straightOut: calliper('“straight” by eye is out by', [0, 0.005], {
    usual: sortingDefaults.byEyeM.straight,
    origin: ours,
  }),
  slightOut: calliper('“slightly out” by eye is out by', [0.00001, 0.005], {
    usual: sortingDefaults.byEyeM.slight,
    origin: ours,
  }),
  bentOut: calliper('“bent” by eye is out by', [0, 0.005], {
    usual: sortingDefaults.byEyeM.bent,
    origin: ours,
  }),
});

export const sorting = single('Sorting', straightEnough);

/** A row for each kind and size in the shop's drawers. */
export const rack = many('Guide of the shop', {
  order: order(),
  kind: choice('kind', namesOf(guideKinds), { folded: true, usual: 'snake' }),
  name: text('name in the drawer', 120, { empty: 'your own word for it' }),
  ...guideNumbers,
  /** An empty one is typical of the size. */
  numbersAre: choice(
    'its numbers are',
    { measured: 'measured here', stated: 'from the packet' },
    { folded: true, usual: 'measured' },
  ),
  onHand: count('on hand', [0, 100_000], { empty: 'not counted' }),
  note: text('note', 400),
});

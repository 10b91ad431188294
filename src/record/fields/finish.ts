/** The finish: its data sheet, how it is mixed, and the coats that went on. */
import { batchRules } from '../../engine/finish/batches.ts';
import { commonFootHeightM } from '../../engine/finish/coat-volume.ts';
import { commonTimes } from '../../engine/finish/schedule.ts';
import {
  calliper,
  choice,
  count,
  days,
  duration,
  flag,
  habits,
  holding,
  hours,
  instant,
  many,
  order,
  ours,
  percent,
  real,
  row,
  single,
  temperature,
  text,
  trade,
  tradeSays,
} from './declare.ts';

const mixing = habits({
  product: text('product', 120, { empty: 'as on the bottle' }),
  /** At which its times hold. */
  statedAtC: temperature('data-sheet temperature', { usual: commonTimes.statedC, origin: trade(21, 27) }),
  potLife: duration('pot life', {
    usual: commonTimes.potLifeS,
    origin: trade(15 * 60, 25 * 60, 'slow ones 35 to 45 min'),
    likely: [60, hours(12)],
  }),
  turnFor: duration('turn for', {
    usual: commonTimes.turnForS,
    origin: trade(hours(4), hours(8)),
    likely: [hours(1), hours(72)],
  }),
  recoatFrom: duration('recoat after', {
    usual: commonTimes.recoatFromS,
    origin: trade(hours(12), hours(24)),
    likely: [hours(1), days(7)],
  }),
  recoatUntil: duration('recoat before', {
    usual: commonTimes.recoatUntilS,
    origin: trade(hours(24), hours(48)),
    likely: [hours(2), days(14)],
  }),
  flexAfter: duration('bend after', {
    usual: commonTimes.flexAfterS,
    origin: tradeSays('24 h and more'),
    likely: [hours(2), days(30)],
  }),
  fishAfter: duration('fish after', {
    usual: commonTimes.fishAfterS,
    origin: trade(days(3), days(7)),
    likely: [hours(12), days(60)],
  }),
  mixBy: choice('measure by', ['volume', 'mass'], { usual: 'volume', origin: trade() }),
  partA: real('parts of resin', [0, 1000], { usual: 1, origin: trade() }),
  partB: real('parts of hardener', [0, 1000], { usual: 1, origin: trade() }),
  /** As the data sheet states it; left out: by volume where it is measured by volume. */
  ratioBy: choice('ratio stated by', ['volume', 'mass'], { folded: true, empty: 'as on the data sheet' }),
  /** Needed where ratio or scale go by mass. */
  densityA: holding('density', 'density of the resin', [0, 5]),
  densityB: holding('density', 'density of the hardener', [0, 5]),
  /** Of the syringe in ml, of the scale in g. */
  measureStep: real('smallest mark of syringe or scale', [0, 100], { usual: 0.1, origin: trade() }),
  ratioErrorPercent: percent('ratio error per mark', [0.1, 50], {
    usual: batchRules.ratioErrorPercent,
    origin: ours,
  }),
  brushedPercent: percent('brushing time, share of pot life', [1, 100], {
    usual: batchRules.brushedPercent,
    origin: ours,
  }),
  /** For what stays in cup and brush. */
  mixTimes: real('mix, of what the rod takes', [1, 20], {
    unit: '×',
    usual: batchRules.mixTimes,
    origin: ours,
  }),
  coatThickness: calliper('thickness of a coat', [0, 0.005], { usual: 0.00025, origin: ours }),
  coatsPlanned: count('coats on the finished rod', [1, 15], { usual: 2, origin: trade(1, 3) }),
  footHeight: calliper('height of a foot, filled beside', [0, 0.005], {
    usual: commonFootHeightM,
    origin: trade(),
  }),
  halvesPerC: holding('warmer', 'times halve for every', [2, 100], {
    usual: commonTimes.halvesPerC,
    origin: trade(),
  }),
  minutesPerWrap: real('brushing one wrap takes', [0, 60], { unit: 'min', usual: 0.5, origin: trade() }),
});

export const finish = single('Finish', {
  ...mixing,
  roomC: temperature('room', { usual: commonTimes.statedC, origin: trade(21, 27) }),
  /** The builder's word before the first coat, which cannot be taken off. */
  guidesChecked: flag('guides on the line, sighted once more from both ends'),
  wrapsChecked: flag('wraps packed, tags cut, no fuzz, no gap'),
  levelChecked: flag('the rod lies level on its supports, along its whole length'),
  dustFree: flag('no dust, no silicone, no draught; product and room warm'),
});

/** What goes wrong with a coat, by its id. */
export const coatFaults = {
  bubbles: 'Bubbles',
  sags: 'Sags or runs',
  'thick-middle': 'Football: thick in the middle of a wrap',
  craters: 'Craters, fish-eyes',
  tacky: 'Stays tacky',
  haze: 'Cloud or haze',
  fuzz: 'Fuzz through the coat',
  waves: 'Waves or lumps',
  'uneven-colour': 'Colour uneven along the rod',
  'crack-at-foot': 'Crack at a foot’s end',
} as const;
export type CoatFault = keyof typeof coatFaults;

export const coats = many('Coat', {
  order: order(),
  brushedAt: instant('brushed on'),
  roomC: temperature('room then'),
  note: text('note', 400, { empty: 'batch, level, how it lay' }),
  fault: text('what went wrong', 60, { names: coatFaults, empty: 'nothing' }),
});

/** Alarms that were heard and put off, one row each. */
export const alarmsHeard = many('Alarm', { coat: row('coat', 'coats'), due: text('what was due', 40) });

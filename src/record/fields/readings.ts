/** What was read of the blank under weights: set-ups, the weights hung in them, and the drops. */
import type { ProtocolStand } from '../../engine/bench/protocol.ts';
import {
  angle,
  choice,
  flag,
  length,
  many,
  mass,
  order,
  row,
  rule,
  text,
  trade,
  tradeSays,
} from './declare.ts';

/** Which line of the blank a drop is read at. */
export const readingEdges = { upper: 'upper edge', axis: 'middle', lower: 'lower edge' } as const;

/** A tape read by eye beside a still tip. */
export const tapeSigmaM = 0.002;

/** Where a set-up stands in a plan, or where a proposal put it; `…` is the length that it was measured out to. */
export const setupPlaces = {
  tip: 'Tip over a padded edge',
  whole: 'Whole blank level',
  half: 'Clamp moved to half',
  quarter: 'Clamp moved three quarters up',
  'clamp-at': 'Clamp at …',
  'clamp-at-turned': 'Clamp at …, turned half over',
  supports: 'Two supports',
  'supports-at': 'Two supports about …',
} as const satisfies Record<ProtocolStand, string> & Record<string, string>;
export type SetupPlace = keyof typeof setupPlaces;

export const setups = many('Set-up', {
  order: order(),
  /** The builder's own; empty: what its place is called. */
  name: text('name', 120),
  place: choice('place in the plan', setupPlaces),
  /** In the builder's words; empty: the first day. */
  day: text('day it was read', 40, { empty: 'first day' }),
  kind: choice('kind of set-up', ['clamp', 'span']),
  nominalAngle: angle('axis at the clamp, above level', { usual: 0 }),
  clampFromTip: length('tip to the clamp'),
  clampHeight: length('clamp above the floor'),
  turned: angle('blank turned on its axis', { usual: 0 }),
  edge: choice('line of the blank that was read', readingEdges, { usual: 'axis' }),
  supportTipSide: length('tip to the first support'),
  supportButtSide: length('tip to the second support'),
  loadFromTip: length('tip to the weight'),
  /** Standard deviation. */
  sigma: rule('readings good to ±', [0, 0.1], { usual: tapeSigmaM, origin: trade() }),
  tiltSigma: angle('clamp level to ±', { usual: Math.PI / 180, origin: tradeSays('levelled by eye') }),
});

/** One hung weight (or none) of a set-up. */
export const tests = many('Weight', {
  order: order(),
  setup: row('set-up', 'setups'),
  hung: mass('weight hung', [0, 50]),
  hungFromTip: length('hung from the tip', [0, 10], { usual: 0 }),
  sag: rule('sag at the weight', [-1, 2]),
});

export const readings = many('Reading', {
  order: order(),
  test: row('under which weight', 'tests'),
  fromTip: length('station from the tip'),
  /** Wherever that stands; then without `fromTip`. */
  atClamp: flag('read at the clamp'),
  drop: rule('drop', [-10, 10]),
  setAside: flag('set aside'),
});

/** Flags of a set-up measured once more, from the clamp along the blank. */
export const flagChecks = many('Second measurement of a flag', {
  order: order(),
  setup: row('set-up', 'setups'),
  fromTip: length('flag'),
  fromClamp: length('from the clamp', [0, 10], { empty: 'from the clamp' }),
});

/** A section turned about its own axis in steps, read under two loads. */
export const turnings = many('Turning', {
  order: order(),
  section: row('section', 'sections'),
  held: choice('held', { span: 'on two supports', clamp: 'clamped at its butt' }, { usual: 'span' }),
  loadA: mass('first load', [0, 50], { empty: 'nothing' }),
  loadB: mass('second load'),
  /** Standard deviation. */
  sigma: rule('± of one reading', [0, 0.1]),
});

export const turnReadings = many('Step of a turning', {
  order: order(),
  turning: row('turning', 'turnings'),
  turn: angle('angle facing down'),
  dropA: rule('under the first load', [-5, 5]),
  dropB: rule('under the second load', [-5, 5]),
  setAside: flag('set aside'),
});

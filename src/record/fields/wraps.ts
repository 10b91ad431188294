/** How wraps are laid: thread, lengths, ferrules, trim; and what only this rod carries. */
import type { UnitSystem } from '../../engine/units/unit-table.ts';
import { wrapDefaults } from '../../engine/wraps/wrap-choices.ts';
import {
  choice,
  colour,
  count,
  flag,
  habits,
  length,
  lengthAt,
  ours,
  percent,
  real,
  rule,
  single,
  text,
  trade,
  tradeSays,
} from './declare.ts';

/**
 * The width of a test wrap, as a shop's rule has it; the trade says turns over an inch. A count that stands alone is of an
 * inch: so earlier versions kept it.
 */
export const testWrap = {
  inch: { si: 0.0254, text: '1 in' },
  mm: { si: 0.025, text: '25 mm' },
} satisfies Record<UnitSystem, { si: number; text: string }>;
const countedOverM = testWrap.inch.si;
const { footWraps } = wrapDefaults;
const run = lengthAt('run');
const asOnTheSpool = { empty: 'as on the spool' };

const laying = habits({
  /** Of close wrap: the thread as it lies on this bench. */
  turnsCounted: real('turns counted', [0, 10_000], {
    usual: Math.round(countedOverM / wrapDefaults.laidWidthM),
    origin: trade(160, 180, 'size A over an inch'),
  }),
  turnsOver: rule('over a width of', [0, 1], {
    usual: countedOverM,
    origin: trade(),
    hint: 'Lay a close wrap and count it: spools of one size differ.',
  }),
  startBeforeFoot: rule('start before the foot', [0, 0.05], {
    usual: wrapDefaults.startBeforeFootM,
    origin: trade(0.002, 0.006),
  }),
  lockTurns: count('turns over the tag (lock)', [0, 100], {
    usual: wrapDefaults.lockTurns,
    origin: trade(5, 10),
  }),
  underwrap: flag('underwrap beneath every foot (heavy rods)'),
  underwrapBeyond: rule('an underwrap shows at either end by', [0, 0.05], {
    usual: wrapDefaults.underwrapBeyondM,
    origin: trade(0.006, 0.01),
  }),
  trimTurns: count('trim turns at each end', [0, 60], { usual: wrapDefaults.trimTurns, origin: trade(2, 5) }),
  ferruleWraps: choice('ferrule wraps', ['yes', 'no'], {
    usual: wrapDefaults.ferruleWraps ? 'yes' : 'no',
    origin: tradeSays('disputed: some blanks are bound inside'),
  }),
  ferruleDiameters: real('length of a ferrule wrap', [0.1, 10], {
    unit: '× diameter',
    usual: wrapDefaults.ferruleDiameters,
    origin: trade(1.5, 2),
  }),
  ferruleEdge: rule('a ferrule wrap stays off the edge by', [0, 0.02], {
    usual: wrapDefaults.ferruleEdgeM,
    origin: trade(0.001, 0.002),
  }),
  checkWrap: rule('wrap at the winding check', [0, 0.2], {
    usual: wrapDefaults.checkWrapM,
    origin: trade(0.005, 0.02),
  }),
  tipWrap: rule('wrap at the tip-top', [0, 0.1], { usual: wrapDefaults.tipWrapM, origin: trade() }),
  wrapTip: rule('on the tip section', [0, 0.1], { usual: footWraps.tipM, origin: trade(0.009, 0.011) }),
  wrapMiddle: rule('between tip and butt', [0, 0.1], {
    usual: footWraps.middleM,
    origin: trade(0.011, 0.013),
  }),
  wrapButt: rule('on the butt section', [0, 0.1], { usual: footWraps.buttM, origin: trade(0.014, 0.018) }),
  wrapStripping: rule('at the stripping guide', [0, 0.1], {
    usual: footWraps.strippingM,
    origin: trade(0.018, 0.022),
  }),
  tagPerWrap: length('cut off and held at each wrap', [0, 5], {
    usual: wrapDefaults.tagPerWrapM,
    origin: ours,
  }),
  spoolLength: run('thread on a spool', [1, 20_000], { usual: wrapDefaults.spoolM, origin: trade() }),
  reservePercent: percent('reserve', [0, 300], { usual: wrapDefaults.reservePercent, origin: trade(12, 50) }),
  threadColour: colour('thread', wrapDefaults.thread.colour),
  threadName: text('thread: colour’s name', 80, asOnTheSpool),
  trimColour: colour('trim', wrapDefaults.trim.colour),
  trimName: text('trim: colour’s name', 80, asOnTheSpool),
  underwrapColour: colour('underwrap', wrapDefaults.under.colour),
  underwrapName: text('underwrap: colour’s name', 80, asOnTheSpool),
});

export const wraps = single('Wraps', {
  ...laying,
  /** As the spool says, for the day it has to be matched. */
  threadLot: text('thread: lot', 80),
  trimLot: text('trim: lot', 80),
  /** To its butt side. */
  signatureFrom: length('signature from the butt end'),
  signatureLength: rule('signature’s length', [0, 1]),
  signatureText: text('signature', 200, { empty: 'name, length, line, number' }),
});

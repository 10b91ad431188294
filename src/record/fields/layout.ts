/** Where the guides start, what a layout is judged by, and the weights it is judged under. */
import { choiceDefaults } from '../../engine/flow/choices.ts';
import { commonFriction } from '../../engine/layout/real-line.ts';
import {
  angle,
  choice,
  count,
  habits,
  length,
  many,
  mass,
  real,
  rule,
  single,
  text,
  trade,
} from './declare.ts';
import { limitFields } from './limit-fields.ts';

export const tapeSteps = ['1 mm', '1/8 in', '1/16 in', '1/32 in'] as const;
export const unitNames = { inch: 'inches', mm: 'millimetres' } as const;

const ofTheRod = { empty: 'usual of the rod' };

const judging = habits({
  knot: rule('thickest knot that must pass', [0, 0.05], { empty: 'not checked', fineness: 'calliper' }),
  buttAngle: angle('butt above level', { usual: choiceDefaults.buttAngleRad, origin: trade() }),
  /** When the weight is tied to the tip (as a mass). */
  tautLine: mass('weight that keeps the line taut', [0, 50], {
    usual: choiceDefaults.tautLineKg,
    origin: trade(),
  }),
  intervals: choice('intervals', { growing: 'growing toward the butt', free: 'free' }, { usual: 'growing' }),
  ...Object.fromEntries(Object.values(limitFields).map(({ field, declared }) => [field, declared])),
  /** Coefficient of friction of the line on the rings: both ends of what it may be. */
  frictionLowest: real('friction, at least', [0, 2], { usual: commonFriction.lowest }),
  frictionHighest: real('friction, at most', [0, 2], { usual: commonFriction.highest }),
  /** Between a guide's foot and a ferrule's edge. */
  ferruleClear: rule('kept free beside a ferrule', [0, 0.2], {
    ...ofTheRod,
    hint: ({ fine }) =>
      `${fine(0.006)} to ${fine(0.015)} clear of a ferrule’s wrap; ${fine(0.025)} and more beside a spigot (common practice, no source).`,
  }),
});

export const layout = single('Layout', {
  startKind: choice(
    'start from',
    { rule: 'arithmetic rule', chart: 'chart', own: 'own list' },
    { usual: 'rule' },
  ),
  startCount: count('guides, the tip-top not counted', [2, 30]),
  startFirst: length('first guide from the tip'),
  startStripping: length('stripping guide from the tip'),
  /** One station after the other, and how to read them. */
  startText: text('list of marks, typed or pasted', 4000, { empty: '4 1/2, 9 3/4, 15 5/8 …', lines: 5 }),
  startUnit: choice('bare numbers are', { inch: 'inches', mm: 'mm' }),
  startFrom: choice('counted from', { tip: 'the tip', butt: 'the butt end' }, { usual: 'tip' }),
  guidesSide: choice('guides', { under: 'under the rod', over: 'on top', spiral: 'in a spiral' }),
  spiralBy: choice(
    'the line goes round',
    { right: 'to the right', left: 'to the left' },
    { usual: choiceDefaults.spiral.by, hint: 'Seen from behind the butt, reel on top.' },
  ),
  spiralOnTop: count('guides on top before it begins', [0, 10], {
    usual: choiceDefaults.spiral.onTop,
    hint: 'Counted from the reel.',
  }),
  spiralOver: count('guides between top and under', [0, 8], {
    usual: choiceDefaults.spiral.transitions,
    origin: trade(1, 3),
  }),
  loadBy: choice('the weight hangs', { line: 'on the line', tied: 'tied to the tip' }, { usual: 'line' }),
  ...judging,
  tapeStep: choice('rounded to the tape’s', tapeSteps),
});

/** Empty: the default that follows the blank's power. */
export const ladder = many('Test load', {
  order: { kind: 'number', min: -1e9, max: 1e9, name: 'place in the list' },
  load: mass('load'),
});

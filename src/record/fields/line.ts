/** The line of a rod without a fly line: how strong, what it throws, and how it leaves the reel to the first guide. */
import { type RodKind, rodKinds } from '../../engine/kinds/rod-kinds.ts';
import { fanLimitsDefault } from '../../engine/spool/first-ring.ts';
import { angle, calliper, length, mass, ours, rule, single, trade } from './declare.ts';

const degrees = Math.PI / 180;
const rods = rodKinds.flatMap((kind) => (kind.flyLine ? [] : [kind.id as RodKind]));

/** Heights are those of the spindle's own line, prolonged: a thread on the bare spindle, or a straight rod in it. */
const sightings = {
  nearAt: length('first sighting, from the butt end', [0, 10], {
    rods,
    hint: 'Spool off. Tie a thread to the spindle and pull it straight in line with it.',
  }),
  nearHeight: rule('spindle’s line over the blank there', [-0.2, 0.5], {
    rods,
    hint: 'From the blank’s surface to the thread.',
  }),
  farAt: length('second sighting, from the butt end', [0, 10], {
    rods,
    hint: ({ length: say }) => `At least ${say(0.3)} further toward the tip.`,
  }),
  farHeight: rule('spindle’s line over the blank at the second', [-0.2, 0.5], { rods }),
};

export const line = single('Line', {
  test: mass('line test', [0.1, 100], {
    rods,
    likely: [0.5, 60],
    example: 4.5359237,
    hint: 'The pull it breaks at, as its packet says.',
  }),
  /** Usual: `drag` of engine/kinds/line-load.ts. */
  drag: mass('drag set at', [0.01, 60], { rods, empty: 'a quarter to a third of the test' }),
  lureLeast: mass('lure or lead, from', [0.0005, 2], { rods, likely: [0.0005, 0.3], example: 0.007 }),
  lureMost: mass('lure or lead, up to', [0.0005, 2], { rods, likely: [0.0005, 0.3], example: 0.021 }),
  lipDiameter: calliper('spool’s lip, across', [0.005, 0.2], { rods, example: 0.046 }),
  tilt: angle('spindle’s tilt toward the blank', {
    rods,
    usual: 3.5 * degrees,
    origin: trade(2 * degrees, 4.5 * degrees, 'two sightings take its place'),
  }),
  ...sightings,
  windWidth: rule('level-wind moves across', [0.001, 0.2], { rods, example: 0.028 }),
  limitFan: angle('line off the reel turns in the first guide', {
    rods,
    usual: fanLimitsDefault.lineAngleRad,
    origin: ours,
  }),
  limitClear: rule('line clear of blank and grip', [0, 0.1], {
    rods,
    usual: fanLimitsDefault.clearanceM,
    origin: ours,
  }),
  limitFirst: angle('line angle in the first guide, under load', {
    rods,
    empty: 'usual of the rod',
    hint: 'Counts only where the kind of rod asks for it, or you give a limit.',
  }),
});

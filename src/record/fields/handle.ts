/** Grip, seat, reel and keeper, and how this shop fits and glues them. */
import { handleDefaults } from '../../engine/handle/handle-parts.ts';
import type { RodKindDeclaration } from '../../engine/kinds/rod-kind.ts';
import { type RodKind, rodKinds } from '../../engine/kinds/rod-kinds.ts';
import { commonGlueCureS } from '../../engine/plan/bend-gate.ts';
import {
  calliper,
  choice,
  count,
  duration,
  flag,
  habits,
  hours,
  instant,
  length,
  mass,
  rule,
  single,
  text,
  trade,
  tradeSays,
} from './declare.ts';

const { checkRoomM, tubeRoomM } = handleDefaults;

const fitting = habits({
  arborCount: count('bands of arbor under the seat', [1, 12], {
    usual: handleDefaults.arborCount,
    origin: trade(2, 4),
  }),
  arborWidth: rule('width of a band', [0.001, 0.1], { usual: handleDefaults.arborWidthM, origin: trade() }),
  glueLine: calliper('glue between blank and grip, all round', [0, 0.005], {
    usual: handleDefaults.glueLineM,
    origin: trade(0.0001, 0.0003),
  }),
  reamShort: rule('the reamer stops short of the end by', [0, 0.1], {
    usual: handleDefaults.reamShortM,
    origin: trade(0.005, 0.01),
  }),
  /** From mixing. */
  glueCure: duration('glue may be bent after', {
    usual: commonGlueCureS,
    origin: tradeSays('slow epoxy, a day'),
    likely: [60, hours(200)],
  }),
  /** For glue. */
  arborShort: rule('arbors stop short of the seat’s ends by', [0, 0.05], {
    usual: handleDefaults.arborShortM,
    origin: trade(0.003, 0.006),
  }),
  /** Over it tape no longer carries the seat. */
  tapedGap: calliper('widest gap, all round, that tape may fill', [0.0001, 0.01], {
    usual: handleDefaults.tapedGapM,
    origin: trade(),
  }),
  checkLeast: calliper('winding check wider than the blank by, at least', [0, 0.002], {
    usual: checkRoomM.least,
    origin: trade(0.0001, 0.0003),
  }),
  checkMost: calliper('check wider by, at most', [0, 0.005], {
    usual: checkRoomM.most,
    origin: trade(0.0001, 0.0003),
  }),
  tubeLeast: calliper('tip-top’s tube wider than the tip by, at least', [0, 0.001], {
    usual: tubeRoomM.least,
    origin: trade(0.00003, 0.0001),
  }),
  tubeMost: calliper('tube wider by, at most', [0, 0.002], {
    usual: tubeRoomM.most,
    origin: trade(0.00003, 0.0001),
  }),
  seatLock: choice('seat locks', ['up', 'down'], { usual: 'up', origin: trade() }),
  /** A small loop over its one or two feet. */
  keeperLength: rule('keeper over its feet', [0, 0.1], { usual: 0.022, origin: trade() }),
  keeperFeet: count('feet of the keeper', [1, 2], { usual: 2, origin: trade(1, 2) }),
});

const kindsWith = (asked: (kind: RodKindDeclaration) => boolean) =>
  rodKinds.flatMap((kind) => (asked(kind) ? [kind.id as RodKind] : []));
const lineRods = kindsWith(({ flyLine }) => !flyLine);

/** Parts that only some kinds of rod have; what a fly rod calls its grip is their foregrip. */
const furtherParts = {
  reelSide: choice('reel', { under: 'under the rod', over: 'on top' }, { rods: lineRods }),
  seatKind: choice('kind of seat', { plain: 'plain', trigger: 'with a trigger' }, { rods: lineRods }),
  gripDiameter: calliper('foregrip, across', [0.005, 0.1], {
    rods: lineRods,
    usual: handleDefaults.gripDiameterM,
    origin: trade(0.018, 0.035),
  }),
  rearGripLength: length('rear grip’s length', [0, 1], {
    rods: kindsWith(({ handle: { parts } }) => parts.includes('rear grip')),
  }),
  rearGripBore: calliper('rear grip’s bore', [0, 0.1], {
    rods: kindsWith(({ handle: { parts } }) => parts.includes('rear grip')),
  }),
  rearGripMass: mass('rear grip’s mass', [0, 50], {
    likely: [0.003, 0.5],
    rods: kindsWith(({ handle: { parts } }) => parts.includes('rear grip')),
  }),
  secondGripLength: length('second grip’s length, from the butt end', [0, 1], {
    rods: kindsWith(({ handle: { parts } }) => parts.includes('second grip')),
  }),
  secondGripMass: mass('second grip’s mass', [0, 50], {
    likely: [0.003, 0.5],
    rods: kindsWith(({ handle: { parts } }) => parts.includes('second grip')),
  }),
};
const heldByTwo = kindsWith(({ twoHands }) => twoHands === true);

export const handle = single('Handle', {
  /** Where the bend begins. */
  gripFront: length('butt end to the front of the grip', [0, 10], { hint: 'The bend begins here.' }),
  reelFromButt: length('butt end to where the line leaves the reel'),
  /** To the guides' side. */
  reelOffset: length('line at the reel, off the blank’s axis', [0, 0.5]),
  reelMass: mass('mass of the reel with line', [0, 50], { likely: [0.05, 1.5], example: 0.12 }),
  gripShape: text('grip’s shape', 80, { example: 'half-wells' }),
  gripLength: length('grip’s length', [0, 1], { example: 0.1651 }),
  gripBore: calliper('grip’s bore', [0, 0.1], { example: 0.00635 }),
  gripMass: mass('grip’s mass', [0, 50], { likely: [0.003, 0.5] }),
  seatLength: length('seat’s length', [0, 1], { example: 0.0889 }),
  seatBore: calliper('seat’s bore', [0, 0.1], { example: 0.009525 }),
  seatMass: mass('seat’s mass', [0, 50], { likely: [0.01, 0.3] }),
  ...furtherParts,
  ...fitting,
  fightingButt: rule('fighting butt, behind the blank’s end', [0, 0.5], { empty: 'none' }),
  /** From the front of the grip. */
  keeperAhead: rule('keeper ahead of the grip', [0, 0.5], {
    example: 0.01905,
    hint: ({ fine }) =>
      `${fine(0.01)} to ${fine(0.04)} ahead of the check, clear of the thumb (common practice).`,
  }),
  keeperMass: mass('keeper’s mass', [0, 0.1]),
  /** As far as the line hand reaches. */
  reach: length('reach: butt end to the stripping guide', [0, 3], {
    rods: rodKinds.flatMap((kind) => (kind.flyLine ? [kind.id as RodKind] : [])),
    example: 0.762,
    hint: ({ length: say }) => `${say(0.0508)} less than the line hand reaches in comfort (common practice).`,
  }),
  upperHand: length('butt end to the middle of the upper hand', [0, 3], {
    rods: heldByTwo,
    hint: 'The rod bends from here.',
  }),
  lowerHand: length('butt end to the middle of the lower hand', [0, 3], { rods: heldByTwo }),
  seatOnLine: flag('the reel foot stands on the line side'),
  guidesOnLine: flag('the guides’ line runs true over every section'),
  tipTopOnLine: flag('the tip-top stands on the same line'),
  dryFitted: flag('grip, seat and check slide home dry, in one go'),
  gluedAt: instant('glued'),
  tipTopGluedAt: instant('tip-top glued'),
});

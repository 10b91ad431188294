import type { SpoolKinds } from '../../engine/spool/spool-kinds.ts';
import type { Sentences } from './sentences.ts';

export const spoolSentences: Sentences<SpoolKinds> = {
  'spool/too-few-rings': ({ count }) =>
    `There ${count === 1 ? 'is 1 ring' : `are ${count} rings`}. Give the first ring and the next one toward the tip: the line goes on to it.`,
  'spool/ring-behind-grip': ({ fromTipM, lengthM }, w) =>
    `This ring is ${w.length(fromTipM)} from the tip; the front of the grip is ${w.length(lengthM)} from it. Measure the ring from the tip.`,
  'spool/rings-at-one-place': ({ fromTipM, other }, w) =>
    `This ring and ring ${other + 1} of the list are both ${w.length(fromTipM)} from the tip. Give each ring its own place.`,
  'spool/in-front-of-ring': ({ alongM, ringAlongM }, w) =>
    `The spool is in front of its ring: ${w.length(alongM)} ahead of the grip, the ring ${w.length(ringAlongM)}. Count places behind the front of the grip negative, or move the ring toward the tip.`,
  'spool/reel-past-guide': ({ reelFromButtM, guideFromButtM }, w) =>
    `The spool is in front of the first guide. From the butt end: spool ${w.length(reelFromButtM)}, guide ${w.length(guideFromButtM)}. Measure the reel again, or move the guide toward the tip.`,
  'spool/axis-away': ({ tiltRad }, w) =>
    `The spindle points away from the blank by ${w.angle(Math.abs(tiltRad))}, so its line never meets it. Most reels tilt toward the blank: check both heights.`,
  'spool/ring-smaller-than-knot': ({ insideM, knotM }, w) =>
    `A knot of ${w.calliper(knotM)} does not pass a ring of ${w.calliper(insideM)} inside. Take a wider ring or a slimmer knot.`,
  'spool/no-surface': () => 'Give the radius of blank or grip at one place at least.',
  'spool/surface-out-of-order': ({ fromTipM, beforeM }, w) =>
    `${w.length(fromTipM)} comes after ${w.length(beforeM)}. List the radii from the tip to the butt.`,
};

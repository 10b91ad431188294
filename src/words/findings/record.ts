import type { AssumedKinds, RecordKinds } from '../../record/record-kinds.ts';
import type { Sentences } from './sentences.ts';

export const recordSentences: Sentences<RecordKinds> = {
  'record/length-missing': ({ section }) =>
    `Measure ${section} end to end, ferrule and all. It has no length.`,
  'record/diameter-unplaced': () =>
    "Say where this diameter was measured: how far from the section's tip end.",
  'record/overlap-missing': ({ section }) =>
    `Say how deep ${section} seats on the next section. Mark the seat line, pull the joint and measure.`,
  'record/clamp-missing': ({ setup }) =>
    `Say how far from the tip the clamp's edge is. Until then ${setup} does not count.`,
  'record/drop-unplaced': () => 'Say where this drop was read: how far from the tip.',
  'record/span-incomplete': ({ setup }) =>
    `Give both supports and the place of the load, from the tip. Until then ${setup} does not count.`,
  'record/nothing-weighed': (_, w) =>
    `Weigh each section to ${w.mass(0.0001)}, or the whole blank. Until then its mass is a guess.`,
  'record/friction-order': ({ lowest, highest }) =>
    `Swap the two: you gave friction from ${lowest} to ${highest}. It is taken from ${highest} to ${lowest}.`,
  'record/fly-line-on-rod': ({ written, rod }) =>
    `“${written}” reads as a fly line, and a ${rod} rod takes none. Clear it and give the line's test under Layout, or choose a fly rod.`,
  'record/drag-over-test': ({ dragKg, testKg }, w) =>
    `Set the drag below the line's test. At ${w.load(dragKg)} the line breaks first: it holds ${w.load(testKg)}.`,
  'record/lure-order': ({ leastKg, mostKg }, w) =>
    `Swap the two: the lightest lure is ${w.mass(leastKg)}, the heaviest ${w.mass(mostKg)}.`,
  'record/sighting-half': () =>
    'Give both sightings, each with its place and its height. Until then the tilt is the one typed or typical.',
  'record/sightings-close': ({ nearM, farM, leastM }, w) =>
    `Take the second sighting at least ${w.length(leastM)} nearer the tip than the first. They are at ${w.length(nearM)} and ${w.length(farM)}.`,
  'record/sightings-off-reel': ({ sightedM, typedM }, w) =>
    `Measure again: the sightings put the spindle ${w.fine(sightedM)} off the axis at the lip, you typed ${w.fine(typedM)}.`,
  'record/reel-and-guides': ({ reelOver }) =>
    reelOver
      ? 'Put the guides on top, or choose the spiral rod. The reel is on top and these guides are under the rod.'
      : 'Put the guides under the rod, as the reel is, or put the reel on top (Handle).',
  'record/hand-off-grip': ({ upperM, gripM }, w) =>
    `The upper hand is ${w.length(upperM)} from the butt end; the grip ends at ${w.length(gripM)}. Measure to the middle of the hand.`,
  'record/hands-order': ({ upperM, lowerM }, w) =>
    `The lower hand is ${w.length(lowerM)} from the butt end, the upper one ${w.length(upperM)}. Put the lower one at least a hand’s breadth nearer the butt.`,
  'record/list-missing': () =>
    'The list is empty. Until you fill it in, the arithmetic rule stands in for it.',
  'record/list-count': ({ given, guides }) =>
    `The list has ${given} marks for ${guides} guides. Add or remove a guide, or complete the list. Do not count the tip-top.`,
};

export const assumedSentences: Sentences<AssumedKinds> = {
  'assumed/spigot-gap': ({ section, gapM }, w) => `${w.length(gapM)} gap at the spigot below ${section}`,
  'assumed/grip-front': ({ fromButtM }, w) => `the grip's front ${w.length(fromButtM)} from the butt end`,
  'assumed/reel-place': ({ fromButtM }, w) =>
    `the line leaves the reel ${w.length(fromButtM)} from the butt end`,
  'assumed/reel-offset': ({ offM }, w) => `the reel ${w.length(offM)} off the axis`,
  'assumed/guides': ({ count }) =>
    `${count} guides of common sizes for this rod, with their heights and masses`,
  'assumed/first-guide': ({ fromTipM }, w) => `first guide ${w.length(fromTipM)} from the tip`,
  'assumed/stripping-guide': ({ fromButtM }, w) => `stripping guide ${w.length(fromButtM)} from the butt`,
};

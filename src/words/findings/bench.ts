import type { BenchKinds } from '../../engine/bench/bench-kinds.ts';
import type { Sentences } from './sentences.ts';

export const benchSentences: Sentences<BenchKinds> = {
  'bench/diameter-odd': ({ outsideM, toldM }, w) =>
    `${w.calliper(outsideM)} does not fit this blank: the other diameters say about ${w.calliper(toldM)} there. Measure it again. Until then the fit leaves it out.`,
  'bench/joint-sides-differ': ({ section, joint, upperM, lowerM }, w) =>
    `At the ${joint} under ${section} the two sides measure ${w.calliper(upperM)} and ${w.calliper(lowerM)}. Such a joint seldom differs so much: measure both sides again.`,
  'bench/section-length': ({ section, lengthM, leastM, mostM }, w) =>
    `${section} is ${w.length(lengthM)} long. A section is ${w.length(leastM)} to ${w.length(mostM)} long: check the unit.`,
  'bench/section-mass': ({ section, massKg }, w) =>
    massKg > 1
      ? `${section} weighs ${massKg} kg. Did you mean ${massKg} g?`
      : `${section} weighs ${w.mass(massKg)}. A section weighs a gram or more: check the unit.`,
  'bench/balance-off-section': ({ section, balanceM, lengthM }, w) =>
    `${section} balances at ${w.length(balanceM)}, but is only ${w.length(lengthM)} long. Measure from this section's own tip end.`,
  'bench/joint-unsaid': ({ upper, lower }) =>
    `Say how ${upper} joins ${lower}: sleeve, spigot, put-in or put-over.`,
  'bench/spigot-gap-wide': ({ section, gapM }, w) =>
    `The gap below ${section} is ${w.length(gapM)}. A seated spigot shows ${w.fine(0.003)} to ${w.fine(0.013)}: seat it, or check the unit.`,
  'bench/spigot-long': ({ section, plugM }, w) =>
    `The spigot below ${section} is ${w.length(plugM)} long; ${w.length(0.04)} to ${w.length(0.09)} is usual.`,
  'bench/overlap-over-section': ({ upper, lower, overlapM, shorterM }, w) =>
    `${upper} overlaps ${lower} by ${w.length(overlapM)}; the shorter one is only ${w.length(shorterM)} long. Check the overlap.`,
  'bench/overlap-unusual': ({ upper, lower, overlapM }, w) =>
    `${upper} overlaps ${lower} by ${w.length(overlapM)}; ${w.length(0.02)} to ${w.length(0.07)} is usual. Measure how deep it seats.`,
  'bench/joints-meet': ({ section, takenM, lengthM }, w) =>
    `The two ferrules of ${section} overlap each other: ${w.length(takenM)} on a section of ${w.length(lengthM)}. Check both overlaps.`,
  'bench/blank-mass-unit': ({ massKg }) => `The blank weighs ${massKg} kg. Did you mean ${massKg} g?`,
  'bench/masses-disagree': ({ sumKg, wholeKg, allWeighed }, w) =>
    `The sections ${allWeighed ? 'together' : 'weighed so far'} weigh ${w.mass(sumKg)}, the whole blank ${w.mass(wholeKg)}. Weigh again, or leave out the whole.`,
  'bench/ferrules-unbound': ({ massKg, thirdKg }, w) =>
    `Bind the sleeve ferrules before you hang ${w.mass(massKg)}: from ${w.mass(thirdKg)} on, unbound sleeves can split. Then tick that they are bound.`,
  'bench/weight-reaches-floor': ({ dropM, heightM, neededM }, w) =>
    `Clamp at least ${w.length(neededM)} above the floor (now ${w.length(heightM)}), or the weight touches. Or point the blank up, or hang less: the tip drops about ${w.length(dropM)}.`,
  'bench/empty': () => 'Add the sections of the blank, from the tip down, each with its length.',
  'bench/grip-over-blank': ({ gripM, lengthM }, w) =>
    `The grip's front is ${w.length(gripM)} from the butt, on a blank of ${w.length(lengthM)}. Check the length of the grip.`,
  'bench/reel-ahead-of-grip': ({ reelM, gripM }, w) =>
    `The reel (${w.length(reelM)}) is ahead of the grip's front (${w.length(gripM)}). Measure both from the butt end.`,
  'bench/strain-limits': ({ cautionPercent, limitPercent }) =>
    `You warn at ${cautionPercent} % strain but stop at ${limitPercent} %. Swap the two.`,
  'bench/diameters-few': () =>
    'Measure the diameter at the tip and at the butt, better three times a section. The first guess of the stiffness needs it.',
  'bench/diameter-off-section': ({ section, fromOwnTipM, lengthM }, w) =>
    `${w.length(fromOwnTipM)} is not on ${section}, which is ${w.length(lengthM)} long. Measure from this section's own tip end.`,
  'bench/diameter-size': ({ section, outsideM }, w) =>
    `No blank is ${w.calliper(outsideM)} thick (${section}). Check the unit.`,
  'bench/diameters-taper': ({ section, upperOutsideM, upperM, lowerOutsideM, lowerM }, w) =>
    `${section} is ${w.calliper(upperOutsideM)} at ${w.length(upperM)}, but only ${w.calliper(lowerOutsideM)} at ${w.length(lowerM)}. Measure again, or swap the two.`,
  'bench/weight-unit': ({ massKg }) => `You hang ${massKg} kg on the blank. Did you mean ${massKg} g?`,
  'bench/clamp-off-blank': ({ clampM, lengthM }, w) =>
    `The clamp is ${w.length(clampM)} from the tip, but the blank is ${w.length(lengthM)} long. Measure from the tip to the clamp's edge.`,
  'bench/flag-check-past-tip': ({ fromClampM, clampM }, w) =>
    `${w.length(fromClampM)} from the clamp lies past the tip, which is ${w.length(clampM)} away. Measure along the blank from the clamp's edge. Until then it is left out.`,
  'bench/span-order': ({ tipSideM, loadM, buttSideM, lengthM }, w) =>
    `From the tip come a support, the load, the other support. You gave ${w.length(tipSideM)}, ${w.length(loadM)}, ${w.length(buttSideM)} on ${w.length(lengthM)} of blank.`,
  'bench/sag-over-span': ({ sagM, spanM }, w) =>
    `The blank cannot sag ${w.length(sagM)} on a span of ${w.length(spanM)}. Check the unit.`,
  'bench/weight-behind-clamp': ({ fromTipM, clampM }, w) =>
    `The weight hangs ${w.length(fromTipM)} from the tip, behind the clamp at ${w.length(clampM)}. Correct one of the two.`,
  'bench/reading-behind-clamp': ({ fromTipM, clampM }, w) =>
    `${w.length(fromTipM)} from the tip is behind the clamp, which is at ${w.length(clampM)}. Correct one of the two.`,
  'bench/drop-over-length': ({ dropM, beyondM }, w) =>
    `A drop of ${w.length(dropM)} is more than the ${w.length(beyondM)} of blank between clamp and flag. Check the unit and the place.`,
  'bench/drops-jump': ({ upperM, lowerM, dropM }, w) =>
    `Read both flags again. Between ${w.length(upperM)} and ${w.length(lowerM)} the drop changes by ${w.length(dropM)}, more than the blank is long there.`,
  'bench/heavier-drops-less': ({ heavyKg, lightKg, worse, of }, w) =>
    `Did you swap the weights? At ${worse} of ${of} flags ${w.mass(heavyKg)} drops the blank less than ${w.mass(lightKg)}.`,
  'bench/no-marks': () => 'The list holds no guide. Give at least two marks.',
  'bench/mark-above-tip': ({ guide, fromTipM }, w) =>
    `Guide ${guide} at ${w.length(fromTipM)} is not below the tip. Count from the tip down.`,
  'bench/mark-off-blank': ({ guide, fromTipM, lengthM }, w) =>
    `Guide ${guide} at ${w.length(fromTipM)} is off the blank, which is ${w.length(lengthM)} long. Check the unit. Does the list count from the butt?`,
  'bench/mark-under-grip': ({ guide, fromTipM, gripM }, w) =>
    `Guide ${guide} at ${w.length(fromTipM)} is under the grip, which begins at ${w.length(gripM)}. Move it up.`,
  'bench/mark-on-ferrule': ({ guide, fromTipM, zoneFromM, zoneToM }, w) =>
    `Move guide ${guide} off the ferrule. It is at ${w.length(fromTipM)}; keep ${w.length(zoneFromM)} to ${w.length(zoneToM)} free.`,
  'bench/marks-order': ({ guide, fromTipM, beforeM }, w) =>
    `Guide ${guide} at ${w.length(fromTipM)} is ${fromTipM === beforeM ? 'at the same place as' : 'nearer the tip than'} guide ${guide - 1}, at ${w.length(beforeM)}. Give the marks from the tip down.`,
  'bench/mark-slip': ({ guide, fromTipM, likelyM }, w) =>
    `Check guide ${guide}: ${w.length(fromTipM)} is out of step with its neighbours. About ${w.length(likelyM)} would fit.`,
  'bench/rule-count': ({ count }) =>
    `The rule cannot space ${count} guides. Give a whole number from 2 to 30.`,
  'bench/rule-first': ({ firstM, strippingM }, w) =>
    `The first guide is at ${w.length(firstM)}. Put it between the tip and the stripping guide at ${w.length(strippingM)}.`,
  'bench/rule-overshoots': ({ count, firstM, strippingM }, w) =>
    `Start nearer the tip, or take fewer guides. ${count} guides from ${w.length(firstM)} overshoot the stripping guide at ${w.length(strippingM)}.`,
  'bench/list-empty': () =>
    'The list is empty. Type or paste the distances from tip or butt, in inches or mm.',
  'bench/no-drops': () =>
    'Hang one weight and read the tip with and without it. Until then the stiffness is a guess from the diameters.',
};

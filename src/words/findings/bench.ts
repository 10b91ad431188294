import type { BenchKinds } from '../../engine/bench/bench-kinds.ts';
import type { Sentences } from './sentences.ts';

export const benchSentences: Sentences<BenchKinds> = {
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
    `Bind the sleeve ferrules before you hang ${w.mass(massKg)}: from ${w.mass(thirdKg)} on, unbound sleeves can split. Then tick "ferrules are bound" under Blank.`,
  'bench/weight-reaches-floor': ({ dropM, heightM, neededM }, w) =>
    `The weight would touch the floor. The tip drops about ${w.length(dropM)}; clamp at least ${w.length(neededM)} above the floor (now ${w.length(heightM)}), point the blank up, or hang less.`,
};

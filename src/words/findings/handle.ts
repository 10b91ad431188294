import type { HandleKinds } from '../../engine/handle/handle-kinds.ts';
import type { Sentences } from './sentences.ts';

export const handleSentences: Sentences<HandleKinds> = {
  'handle/grip-past-section': ({ frontM, sectionM }, w) =>
    `Set the grip's front further back, or take a shorter grip. Its front is ${w.length(frontM)} from the butt; the butt section is ${w.length(sectionM)}.`,
  'handle/grip-too-long': ({ lengthM, frontM }, w) =>
    `Shorten the grip or move its front. It is ${w.length(lengthM)} long, but its front is only ${w.length(frontM)} from the butt.`,
  'handle/seat-too-long': ({ missingM, mostM }, w) =>
    `Move the grip's front ${w.length(missingM)} forward, or take a seat of at most ${w.length(mostM)}. Grip and seat do not fit behind it.`,
  'handle/rear-grip-too-long': ({ missingM, mostM }, w) =>
    `Take a rear grip of at most ${w.length(mostM)}, or move the foregrip's front ${w.length(missingM)} forward. It reaches past the butt end.`,
  'handle/reach-on-grip': ({ reachM, frontM }, w) =>
    `A reach of ${w.length(reachM)} ends on the grip (front at ${w.length(frontM)}). Measure from the butt end to where the hand strips line.`,
  'handle/grip-bore-wide': ({ boreM, overM }, w) =>
    `Bush the grip's front, or take a smaller bore. At ${w.calliper(boreM)} it is ${w.calliper(overM)} wider than the blank.`,
  'handle/seat-bore-small': ({ boreM, blankM }, w) =>
    `Open the seat's insert, or take a wider seat. Its bore is ${w.calliper(boreM)}, the blank under it ${w.calliper(blankM)}.`,
  'handle/seat-gap-wide': ({ gapM, tapedM }, w) =>
    `Fill the seat's gap with a turned bush, cork, foam or mesh, not tape. It is ${w.calliper(gapM)} all round; tape fills up to ${w.calliper(tapedM)}.`,
};

import type { BagKinds } from '../../engine/guides/bag-sorting.ts';
import type { GuideKinds } from '../../engine/guides/check-guide-set.ts';
import { asideReasons } from '../../record/fields/guides.ts';
import type { Sentences } from './sentences.ts';

export const guideSentences: Sentences<GuideKinds & BagKinds> = {
  'guides/size-order': ({ guide, size, nextSize }) =>
    `Swap guide ${guide} (${size}) and guide ${guide + 1} (${nextSize}). Sizes get smaller toward the tip.`,
  'guides/knot-sticks': ({ guide, knotM, openingM, measured }, w) =>
    `Take a larger guide ${guide} or a slimmer knot. The knot is ${w.calliper(knotM)}, the opening ${w.calliper(openingM)}${measured ? '' : ' (typical)'}.`,
  'guides/foot-wide': ({ guide, footM, blankM }, w) =>
    `Narrow the foot of guide ${guide}, or take a smaller guide. It is ${w.calliper(footM)} wide, the blank there ${w.calliper(blankM)}.`,
  'guides/foot-on-ferrule': ({ guide }) =>
    `Move guide ${guide} off the ferrule, under Layout. One of its feet lies on the joint.`,
  'guides/rejected': ({ why }) => `Rejected by you: ${asideWords(why)}`,
  'guides/no-place': ({ size }) => `No place takes size ${size}.`,
  'guides/out-of-line': ({ size, outM, roomM, straightness, offsetM, angleRad = 0 }, w) =>
    `${offsetM === undefined ? `By eye ${straightness}` : `Feet ${w.calliper(offsetM)} and ${w.lineAngle(angleRad)} out of line`}: that counts as ${w.calliper(outM)}. No place of size ${size} takes more than ${w.calliper(roomM)}.`,
};

/** By its id; in older files in words. */
function asideWords(why: string): string {
  const reason = (asideReasons as Readonly<Record<string, string>>)[why] ?? why;
  return reason.replace(/[.!]?$/, '.');
}

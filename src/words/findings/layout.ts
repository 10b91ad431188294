import type { LayoutKinds } from '../../engine/layout/layout-kinds.ts';
import { leadInWords, unreadInWords } from '../lead.ts';
import type { Sentences } from './sentences.ts';

export const layoutSentences: Sentences<LayoutKinds> = {
  'layout/no-usual-loads': ({ lengthM }, w) =>
    `Give the loads yourself. No weight at the tip lowers it by a third of ${w.length(lengthM)}.`,
  'layout/stripping-place': ({ strippingM, firstM, clampM }, w) =>
    `The stripping guide is at ${w.length(strippingM)}. Put it between guide 1 (${w.length(firstM)}) and the clamp (${w.length(clampM)}).`,
  'layout/guides-need-room': ({ count, needM, roomM }, w) =>
    `Take fewer guides. ${count} need ${w.length(needM)} between the first and the stripping guide, and there is ${w.length(roomM)}.`,
  'layout/held-twice': ({ guide, fromTipM, otherM }, w) =>
    `Guide ${guide} is held at ${w.length(fromTipM)} and at ${w.length(otherM)}. Leave one of them out.`,
  'layout/held-too-close': ({ guide, fromTipM, next, nextM, needM }, w) =>
    `Move guide ${guide} (${w.length(fromTipM)}) or guide ${next} (${w.length(nextM)}). Both are held and need ${w.length(needM)} between them.`,
  'layout/held-in-zone': ({ guide, fromTipM, zoneFromM, zoneToM, tipSideM, buttSideM }, w) =>
    `Move guide ${guide} from ${w.length(fromTipM)} to ${w.length(tipSideM)} or ${w.length(buttSideM)}. It is held too near the kept-free zone ${w.length(zoneFromM)} to ${w.length(zoneToM)}.`,
  'layout/zone-ends': ({ zoneFromM, zoneToM }, w) =>
    `Give the end nearer the tip first, not ${w.length(zoneFromM)} to ${w.length(zoneToM)}.`,
  'layout/no-load': () => 'There is no load. Give at least one, or leave the list out for the usual loads.',
  'layout/load-senseless': ({ tensionN, tiedN, directionRad }) =>
    `Tension ${tensionN} N, tied ${tiedN} N, direction ${directionRad} rad: give loads of 0 or more, and a direction.`,
  'layout/start-order': ({ guide, fromTipM, lengthM }, w) =>
    `Check guide ${guide} at ${w.length(fromTipM)}. Marks run from the tip down, within the rod's ${w.length(lengthM)}.`,
  'layout/start-held': ({ guide, fromTipM, heldM }, w) =>
    `The start has guide ${guide} at ${w.length(fromTipM)}; you hold it at ${w.length(heldM)}.`,
  'layout/start-in-zone': ({ guide, fromTipM, zoneFromM, zoneToM }, w) =>
    `The start puts guide ${guide} at ${w.length(fromTipM)}, in the kept-free zone ${w.length(zoneFromM)} to ${w.length(zoneToM)}.`,
  'layout/start-too-near': ({ guide, fromTipM, intervalM }, w) =>
    `The start puts guide ${guide} at ${w.length(fromTipM)}, only ${w.length(intervalM)} from its neighbour.`,
  'layout/start-shrinks': ({ guide, intervalM, beforeM }, w) =>
    `In the start, the interval to guide ${guide} is ${w.length(intervalM)}, after one of ${w.length(beforeM)}.`,
  'layout/held-leave-no-room': ({ count }, w) =>
    `Move a held mark, or take fewer guides. ${count} do not fit. Each interval needs ${w.length(0.05)}, or the length of the feet.`,
  'layout/held-cannot-grow': () =>
    'Move a held mark, or ask for free intervals. With these held marks the intervals cannot grow toward the butt.',
  'layout/no-clear-place': ({ count, freeHelps }) =>
    freeHelps
      ? `Ask for free intervals, narrow a zone or take fewer guides. With growing intervals, ${count} guides cannot all stay clear.`
      : `Narrow a zone, move a held mark or take fewer guides. ${count} guides do not fit between the kept-free zones.`,
  'layout/worst-between-held': ({ guide }) =>
    `The worst is between ${guide === 1 ? 'the tip-top and guide 1' : `guides ${guide - 1} and ${guide}`}, both held. Only moving one of them makes it better.`,
  'layout/free-beyond-blank': ({ freeM, lengthM }, w) =>
    `Count freeM from the tip to the grip's front. ${w.length(freeM)} is more than the blank's ${w.length(lengthM)}.`,
  'layout/start-stays-unread': () =>
    `Keep the start. ${unreadInWords} Hang one weight and read the drop at the tip and at three flags.`,
  'layout/start-stays': (counts) => `Keep the start, and read more first. ${leadInWords(counts)}`,
  'layout/search-cut-short': () =>
    'A better layout may exist. Take fewer kept-free zones, or pin a guide beside one, and all ways are tried.',
};

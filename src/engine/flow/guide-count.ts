/** The builder's choices with another number of guides. */

import { isBoughtSingly } from '../kinds/guides.ts';
import type { GuideFeet } from '../wraps/wrap-choices.ts';
import type { Choices, ChosenGuide } from './choices.ts';

/**
 * Running guides are taken from those there are, each share of the way as before; the stripping or butt guides stay,
 * fewer of them where the count leaves no room. First and last mark stay; the others, and what was pinned, are placed
 * anew.
 */
export function withGuideCount(choices: Choices, count: number): Choices {
  const { guides, dress, start } = choices;
  if (count === guides.length) return choices;
  const taken = takenGuides(guides, count);
  const own = guides.every(({ stationM }) => stationM !== undefined);
  const ends = [guides[0].stationM, guides[guides.length - 1].stationM];
  const listEnds =
    start.kind === 'list' ? [start.fromTipM[0], start.fromTipM[start.fromTipM.length - 1]] : undefined;
  const [first, last] = own
    ? (ends as number[])
    : (listEnds ?? (start.kind === 'rule' ? [start.firstFromTipM, start.strippingFromTipM] : []));
  return {
    ...choices,
    guides: taken.map((index, place) => ({
      ...guides[index],
      id: undefined,
      stationM: undefined,
      pinned: false,
      // a spiral turns by places from the reel
      fromTopRad: guides[guides.length - count + place]?.fromTopRad,
    })),
    start: { kind: 'rule', count, firstFromTipM: first, strippingFromTipM: last },
    dress: { ...dress, feet: taken.map((index): GuideFeet => dress.feet[index]) },
  };
}

/** Which guide of the set stands at each place of the new one. */
export function takenGuides(guides: readonly ChosenGuide[], count: number): number[] {
  const lastRunning = guides.findLastIndex(({ kind }) => !isBoughtSingly(kind));
  const butts = guides.map((_, index) => index).slice(Math.min(lastRunning + 1, guides.length - 1));
  const kept = butts.slice(-Math.max(1, count - 1));
  const running = guides.length - butts.length;
  const places = count - kept.length;
  const from = Array.from({ length: places }, (_, place) =>
    Math.floor(((place + 0.5) * Math.max(1, running)) / Math.max(1, places)),
  );
  return [...from, ...kept];
}

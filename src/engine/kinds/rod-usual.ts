/** Places and sizes that several kinds of rod share; common practice, no source. */
import type { GuideChoice, HandlePlaces, RodInBrief } from './rod-kind.ts';

export const inch = 0.0254;
const foot = 12 * inch;
export const feetIn = (lengthM: number) => lengthM / foot + 1e-6;
const between = (low: number, value: number, high: number) => Math.min(high, Math.max(low, value));

/** First guide 3 to 5 in from the tip, growing with the rod. */
export const usualFirstM = (blankLengthM: number) =>
  between(3, 4.5 + (blankLengthM / inch - 108) * 0.055, 5.5) * inch;
/** 30 in from the butt at 9 ft, 28 in at 7 ft 6 in. */
const oneHandedFromButtM = (blankLengthM: number) =>
  between(26, 30 + (blankLengthM / inch - 108) / 9, 32) * inch;
export const aheadOfGrip = (aheadM: number) => (_: number, handle: HandlePlaces) =>
  handle.gripFrontFromButtM + aheadM;
export const aheadOfReel = (aheadM: number) => (_: number, handle: HandlePlaces) =>
  handle.reelFromButtM + aheadM;

/** One guide a foot and one more; a half foot rounds up. */
export const oneAFoot = (more: number) => (blankLengthM: number) => Math.round(feetIn(blankLengthM)) + more;

export const twoHandedPlaces = { gripFrontFromButtM: 0.56, reelFromButtM: 0.17, reelOffsetM: 0.065 };
export const oneHandedPlaces = { gripFrontFromButtM: 0.26, reelFromButtM: 0.06, reelOffsetM: 0.055 };

/** Grip lengths grow with the rod; the reel stands a fixed way behind the front of the foregrip. */
export const growingHandle =
  (parts: { shareOfLength: number; reelBehindM: number; reelOffsetM: number }) =>
  (blankLengthM: number): HandlePlaces => {
    const front = Math.round(200 * (0.1 + parts.shareOfLength * blankLengthM)) / 200;
    return {
      gripFrontFromButtM: front,
      reelFromButtM: Math.max(0.05, front - parts.reelBehindM),
      reelOffsetM: parts.reelOffsetM,
    };
  };

export const flyGuides = {
  running: ({ lineWeight }: RodInBrief): GuideChoice => ({
    kind: 'snake',
    sizes: flySizes(lineWeight).running,
  }),
  butt: ({ lineWeight }: RodInBrief): GuideChoice => ({
    kind: 'stripping',
    sizes: flySizes(lineWeight).butt,
  }),
  tipTopSize: 'fly',
};
/** The number in `#5`, `WF8F`, `5-6` (the lower); undefined where there is none from 0 to 15. */
export function lineWeightNumber(text: string): number | undefined {
  const found = /\d+/.exec(text);
  const number = found ? Number(found[0]) : Number.NaN;
  return number <= 15 ? number : undefined;
}

/**
 * As far as the line hand reaches; where the grip is a two-handed one, 20 in ahead of it, and between a grip of 0.3 m
 * and one of 0.5 m the one goes over into the other.
 */
export function flyStrippingFromButtM(blankLengthM: number, { gripFrontFromButtM }: HandlePlaces): number {
  const reach = oneHandedFromButtM(blankLengthM);
  const share = between(0, (gripFrontFromButtM - 0.3) / 0.2, 1);
  return reach + share * (gripFrontFromButtM + 20 * inch - reach);
}

function flySizes(lineWeight: string): { running: readonly string[]; butt: readonly string[] } {
  const number = lineWeightNumber(lineWeight) ?? 5;
  if (number <= 4) return { running: ['2/0', '1/0', '1'], butt: ['10'] };
  if (number <= 6) return { running: ['1/0', '1', '2'], butt: ['12'] };
  if (number <= 8) return { running: ['1', '2', '3'], butt: ['12', '16'] };
  return { running: ['3', '4', '5', '6'], butt: ['16', '20'] };
}

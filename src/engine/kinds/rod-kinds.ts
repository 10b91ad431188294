/**
 * Every kind of rod, said once: its handle, reel, guides, how many, where they start, which side, and the limits that
 * are its own. Loads and the other limits follow the blank, one rule for all kinds (layout/layout-defaults.ts). Ids are
 * kept in records and never change. Every number is common practice, no source, or our choice within the trade's ranges;
 * the builder overrides each.
 */
import type { GuideChoice, RodKindDeclaration } from './rod-kind.ts';
import {
  aheadOfGrip,
  aheadOfReel,
  feetIn,
  flyGuides,
  flyStrippingFromButtM,
  growingHandle,
  inch,
  oneAFoot,
  oneHandedPlaces,
  twoHandedPlaces,
  usualFirstM,
} from './rod-usual.ts';

/** Rings on top stand closer, so that the line clears the blank: two more than one a foot. */
const castingGuides = {
  running: (): GuideChoice => ({ kind: 'ringed-one-foot', sizes: ['6'] }),
  butt: (): GuideChoice => ({ kind: 'ringed', sizes: ['8', '10', '12'] }),
  tipTopSize: '6 mm',
};
const castingHandle = {
  parts: ['rear grip', 'trigger seat', 'foregrip'],
  places: growingHandle({ shareOfLength: 0.14, reelBehindM: 0.09, reelOffsetM: 0.03 }),
} as const;
const castingStart = {
  firstFromTipM: usualFirstM,
  /** 18 to 22 in ahead of the reel. */
  strippingFromButtM: aheadOfReel(20 * inch),
};

/** Rings far apart: the line may stand off the bend by an inch above the ring (common practice, no source). */
const fewRings = { gapM: 0.025 };
/** Our choice. Wider than between other guides: reel and hand set the place, the load bends the butt behind it. */
const firstLineAngleRad = (20 * Math.PI) / 180;

const declared = [
  {
    id: 'fly',
    name: 'fly',
    flyLine: true,
    side: 'under',
    reel: 'fly',
    handle: {
      parts: ['reel seat', 'grip'],
      /** Old records say two-handed rods by their length alone. */
      places: (blankLengthM) => (blankLengthM < 3.2 ? oneHandedPlaces : twoHandedPlaces),
    },
    guides: { ...flyGuides, count: oneAFoot(1) },
    start: {
      firstFromTipM: usualFirstM,
      strippingFromButtM: flyStrippingFromButtM,
    },
  },
  {
    id: 'two-handed-fly',
    name: 'fly, two-handed',
    twoHands: true,
    flyLine: true,
    side: 'under',
    reel: 'fly',
    handle: { parts: ['rear grip', 'reel seat', 'foregrip'], places: () => twoHandedPlaces },
    guides: { ...flyGuides, count: oneAFoot(1) },
    start: { firstFromTipM: usualFirstM, strippingFromButtM: aheadOfGrip(20 * inch) },
  },
  {
    id: 'spinning',
    name: 'spinning',
    flyLine: false,
    side: 'under',
    reel: 'fixed spool',
    handle: {
      parts: ['rear grip', 'reel seat', 'foregrip'],
      places: growingHandle({ shareOfLength: 0.14, reelBehindM: 0.09, reelOffsetM: 0.055 }),
    },
    guides: {
      running: () => ({ kind: 'ringed-one-foot', sizes: ['6'] }),
      butt: ({ blankLengthM }) => ({
        kind: 'ringed-high',
        sizes: blankLengthM < 2 ? ['8', '12', '20'] : ['10', '16', '25'],
      }),
      tipTopSize: '6 mm',
      count: oneAFoot(1),
    },
    limits: { ...fewRings, firstLineAngleRad },
    /** Butt guide 16 to 24 in ahead of the spool. */
    start: { firstFromTipM: usualFirstM, strippingFromButtM: aheadOfReel(20 * inch) },
  },
  {
    id: 'casting',
    name: 'casting, guides on top',
    flyLine: false,
    side: 'over',
    reel: 'multiplier',
    handle: castingHandle,
    guides: { ...castingGuides, count: oneAFoot(2) },
    limits: { firstLineAngleRad },
    start: castingStart,
  },
  {
    id: 'casting-spiral',
    name: 'casting, spiral',
    flyLine: false,
    side: 'under',
    spiral: true,
    reel: 'multiplier',
    handle: castingHandle,
    guides: { ...castingGuides, count: oneAFoot(1) },
    limits: { firstLineAngleRad },
    start: castingStart,
  },
  {
    id: 'surf',
    name: 'surf, two grips',
    twoHands: true,
    flyLine: false,
    side: 'under',
    reel: 'fixed spool',
    handle: {
      parts: ['second grip', 'rear grip', 'reel seat', 'foregrip'],
      places: growingHandle({ shareOfLength: 0.24, reelBehindM: 0.16, reelOffsetM: 0.065 }),
    },
    guides: {
      running: () => ({ kind: 'ringed', sizes: ['10', '12'] }),
      butt: () => ({ kind: 'ringed-high', sizes: ['16', '25', '40'] }),
      tipTopSize: '10 mm',
      count: (blankLengthM) => Math.round(feetIn(blankLengthM) / 2) + 1,
    },
    limits: { ...fewRings, firstLineAngleRad },
    /** Stiff tips and heavy leads: 5 to 6 in. */
    start: { firstFromTipM: () => 5.5 * inch, strippingFromButtM: aheadOfReel(28 * inch) },
  },
  {
    id: 'boat',
    name: 'boat',
    flyLine: false,
    side: 'over',
    reel: 'multiplier',
    handle: {
      parts: ['rear grip', 'reel seat', 'foregrip'],
      places: growingHandle({ shareOfLength: 0.34, reelBehindM: 0.28, reelOffsetM: 0.05 }),
    },
    guides: {
      running: () => ({ kind: 'ringed', sizes: ['10', '12'] }),
      butt: () => ({ kind: 'ringed', sizes: ['16', '20'] }),
      tipTopSize: '10 mm',
      count: oneAFoot(1),
    },
    limits: { firstLineAngleRad },
    start: { firstFromTipM: usualFirstM, strippingFromButtM: aheadOfReel(22 * inch) },
  },
] as const satisfies readonly RodKindDeclaration[];

export const rodKinds: readonly RodKindDeclaration[] = declared;
export type RodKind = (typeof declared)[number]['id'];
export const rodKindIds = declared.map(({ id }) => id);

/** Middles of the hands from the butt end: the lower near the butt, the upper a hand behind the front of the grip. */
export function usualHands(id: RodKind, gripFrontFromButtM: number) {
  if (!rodKindOf(id).twoHands) return undefined;
  return { upperFromButtM: Math.max(0.2, gripFrontFromButtM - 0.1), lowerFromButtM: 0.08 };
}

/** Where the guides of this kind stand unless the builder says otherwise. */
export function usualPlaceRound(id: RodKind): 'under' | 'over' | 'spiral' {
  const { side, spiral } = rodKindOf(id);
  return spiral ? 'spiral' : side;
}

export function rodKindOf(id: RodKind): RodKindDeclaration {
  return rodKinds.find((kind) => kind.id === id) as RodKindDeclaration;
}

/**
 * The best use of a bag of guides that are not all straight.
 *
 * A guide whose feet are out of line by e costs (e / t)² at a place with tolerance t; the sum over all places is
 * made least by an optimal assignment (the linear assignment problem), which the caller's library solves. The
 * tolerance is a share of the blank's diameter there (6 %), so the straightest go to the tip; a guide more than 1.5
 * tolerances out is not used at that place. Both figures are our own choice, no source. By the eye's three classes a
 * guide is out of line by 0.1 mm (straight), 0.25 mm (slight) or 0.5 mm (bent). Measured on a scan: the usual limits,
 * feet o = 0.25 mm beside each other or a = 2.5° between them, each count as slight, and their squares add up:
 * e = e_slight × sqrt((offset / o)² + (angle / a)²). Classes and limits are common practice, no source. Every
 * figure is the builder's to change (SortingRules).
 */
import { type Reason, reasonsOf } from '../finding.ts';

/** Why a guide of the bag goes back. */
export interface BagKinds {
  /** In the builder's own words. */
  'guides/rejected': { why: string };
  'guides/no-place': { size: string };
  'guides/out-of-line': {
    size: string;
    outM: number;
    roomM: number;
    straightness: Straightness;
    /** On a scan; left out where it was seen by eye. */
    offsetM?: number;
    angleRad?: number;
  };
}
const bagReason = reasonsOf<BagKinds>();

export type Straightness = 'straight' | 'slight' | 'bent';
export interface BagGuide {
  id: string;
  size: string;
  /** By eye; a measured guide needs none. */
  straightness?: Straightness;
  measured?: FeetOutOfLine;
  /** Cracked plating, a twist, a rough ring: never used. */
  reject?: string;
}
/** As a scan gives it; magnitudes. */
export interface FeetOutOfLine {
  offsetM: number;
  angleRad: number;
}
export interface BagPlace {
  /** Counted from 1 at the tip. */
  guide: number;
  size: string;
  /** Blank's diameter there. */
  outsideM: number;
}
/** Solves the assignment of every row to a column of its own at the least sum; rows ≤ columns. */
export type Assign = (costs: number[][]) => readonly (readonly [row: number, column: number])[];

export interface SortedBag {
  /** One for every place; without an id the bag has none fit for it. */
  places: (BagPlace & { bagId: string | undefined })[];
  spare: BagGuide[];
  rejects: { guide: BagGuide; reason: Reason }[];
  /** Sizes to order so that every place is filled. */
  order: { size: string; count: number }[];
  /** Sum of (e / t)² over the places that are filled. */
  cost: number;
}

/** How straight is straight enough. */
export interface SortingRules {
  /** Tolerance, of the blank's diameter at the place. */
  ofDiameter: number;
  /** A guide further out than this many tolerances is not used there. */
  mostTolerances: number;
  /** Feet beside each other, and the angle between them, that count as slightly out. */
  usualOffsetM: number;
  usualAngleRad: number;
  /** What the eye's classes stand for. */
  byEyeM: Record<Straightness, number>;
}
export const sortingDefaults: SortingRules = {
  ofDiameter: 0.06,
  mostTolerances: 1.5,
  usualOffsetM: 0.00025,
  usualAngleRad: (2.5 * Math.PI) / 180,
  byEyeM: { straight: 0.0001, slight: 0.00025, bent: 0.0005 },
};

export function sortBag(
  bag: readonly BagGuide[],
  places: readonly BagPlace[],
  assign: Assign,
  rules: SortingRules = sortingDefaults,
): SortedBag {
  const usable = bag.filter(({ reject }) => reject === undefined);
  // One column for every guide and one "leave it open" for every place, dearer than any guide that fits.
  const costs = places.map((place) => [
    ...usable.map((guide) => costAt(guide, place, rules) ?? forbidden),
    ...places.map(() => openCost(place, places)),
  ]);
  const columns = new Map(places.length > 0 ? assign(costs).map(([row, column]) => [row, column]) : []);
  const filled = places.map((place, row) => ({ ...place, bagId: usable[columns.get(row) ?? -1]?.id }));
  const used = new Set(filled.map(({ bagId }) => bagId));
  const left = usable.filter(({ id }) => !used.has(id));
  const fitsNowhere = (guide: BagGuide) => places.every((place) => costAt(guide, place, rules) === undefined);
  const reasoned = left.filter(fitsNowhere).map((guide) => ({ guide, reason: whyNot(guide, places, rules) }));
  return {
    places: filled,
    spare: left.filter((guide) => !fitsNowhere(guide)),
    rejects: [
      ...bag.flatMap((guide) =>
        guide.reject === undefined
          ? []
          : [{ guide, reason: bagReason('guides/rejected', { why: guide.reject }) }],
      ),
      ...reasoned,
    ],
    order: toOrder(filled),
    cost: filled.reduce((sum, { bagId }, row) => {
      return sum + (bagId === undefined ? 0 : costs[row][columns.get(row) ?? 0]);
    }, 0),
  };
}

/** Dearer than any guide that fits, and dearest at the tip: where guides are short, the butt's places wait. */
export function openCost(place: BagPlace, places: readonly BagPlace[]): number {
  return 1e6 + 1e3 * (places.length - places.indexOf(place));
}
const forbidden = 1e9;
/** How far out of line a guide is: measured before seen, seen before taken as straight. */
export function outOfLineOf(
  { measured, straightness = 'straight' }: BagGuide,
  { usualOffsetM, usualAngleRad, byEyeM }: SortingRules = sortingDefaults,
): number {
  if (!measured) return byEyeM[straightness];
  return byEyeM.slight * Math.hypot(measured.offsetM / usualOffsetM, measured.angleRad / usualAngleRad);
}

/** Undefined where the guide may not stand. */
export function costAt(guide: BagGuide, place: BagPlace, rules = sortingDefaults): number | undefined {
  if (guide.size !== place.size) return undefined;
  const share = outOfLineOf(guide, rules) / (rules.ofDiameter * place.outsideM);
  return share > rules.mostTolerances ? undefined : share ** 2;
}

function whyNot(guide: BagGuide, places: readonly BagPlace[], rules: SortingRules): Reason {
  const { size, measured, straightness = 'straight' } = guide;
  const there = places.filter((place) => place.size === size);
  if (there.length === 0) return bagReason('guides/no-place', { size });
  const roomM = rules.mostTolerances * rules.ofDiameter * Math.max(...there.map(({ outsideM }) => outsideM));
  const outM = outOfLineOf(guide, rules);
  return bagReason('guides/out-of-line', { size, outM, roomM, straightness, ...measured });
}

function toOrder(places: readonly { size: string; bagId: string | undefined }[]) {
  const counts = new Map<string, number>();
  for (const { size, bagId } of places)
    if (bagId === undefined) counts.set(size, (counts.get(size) ?? 0) + 1);
  return [...counts].map(([size, count]) => ({ size, count }));
}

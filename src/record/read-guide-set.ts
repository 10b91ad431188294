import { type DiameterRow, diameterAt } from '../engine/bench/diameter-profile.ts';
import type { ChosenGuide } from '../engine/flow/choices.ts';
import {
  type BagGuide,
  type BagPlace,
  type FeetOutOfLine,
  type SortingRules,
  type Straightness,
  sortingDefaults,
} from '../engine/guides/bag-sorting.ts';
import type { SetGuide } from '../engine/guides/check-guide-set.ts';
import { guideKindOf } from '../engine/kinds/guides.ts';
import type { DocumentState } from './operation.ts';
import { oneOf, type RowReader, readRows, readSingle } from './read-values.ts';

export const straightnesses = ['straight', 'slight', 'bent'] as const satisfies Straightness[];

/** The bag in the order it was looked through; a guide's number is its place in this list. */
export function readBag(state: DocumentState): BagGuide[] {
  return readRows(state, 'bag').map((row) => ({
    id: row.id,
    size: row.text('size') ?? '',
    straightness: oneOf(row.text('straightness'), straightnesses),
    measured: measuredFeet(row),
    reject: row.text('reject'),
  }));
}

/** How straight is straight enough, by the builder, his shop, or common practice. */
export function readSortingRules(state: DocumentState): SortingRules {
  const row = readSingle(state, 'sorting');
  return {
    ofDiameter: row.orUsual('ofDiameterPercent') / 100,
    mostTolerances: row.orUsual('mostTolerances'),
    usualOffsetM: row.si('usualOffset') || sortingDefaults.usualOffsetM,
    usualAngleRad: row.si('usualAngle') || sortingDefaults.usualAngleRad,
    byEyeM: {
      straight: row.orUsual('straightOut'),
      slight: row.orUsual('slightOut'),
      bent: row.orUsual('bentOut'),
    },
  };
}

function measuredFeet(row: RowReader): FeetOutOfLine | undefined {
  const [offsetM, angleRad] = [row.si('feetOffset'), row.si('feetAngle')];
  if (offsetM === undefined || angleRad === undefined) return undefined;
  return { offsetM: Math.abs(offsetM), angleRad: Math.abs(angleRad) };
}

/** Places that the bag fills, from the tip; a guide bought singly comes on its own, and without a mark there is none. */
export function bagPlaces(set: readonly SetGuide[], profile: readonly DiameterRow[]): BagPlace[] {
  return set.flatMap(({ kind, size, stationM }, index) =>
    stationM === undefined || guideKindOf(kind).single
      ? []
      : [{ guide: index + 1, size, outsideM: diameterAt(profile, stationM) ?? unmeasuredM }],
  );
}
const unmeasuredM = 0.003;

export function readGuideSet(state: DocumentState, guides: readonly ChosenGuide[]): SetGuide[] {
  const rows = new Map(readRows(state, 'guides').map((row) => [row.id, row]));
  return guides.map(({ id, kind, size, lengthM, stationM }, index) => {
    const row = id === undefined ? undefined : rows.get(id);
    const common = { id: id ?? `${index}`, kind, size, lengthM, stationM };
    return { ...common, openingM: row?.si('opening'), footWidthM: row?.si('footWidth') };
  });
}

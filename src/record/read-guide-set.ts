import type { ChosenGuide } from '../engine/flow/choices.ts';
import type { BagGuide, FeetOutOfLine, Straightness } from '../engine/guides/bag-sorting.ts';
import type { SetGuide } from '../engine/guides/check-guide-set.ts';
import type { DocumentState } from './operation.ts';
import { oneOf, type RowReader, readRows } from './read-values.ts';

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

function measuredFeet(row: RowReader): FeetOutOfLine | undefined {
  const [offsetM, angleRad] = [row.si('feetOffset'), row.si('feetAngle')];
  if (offsetM === undefined || angleRad === undefined) return undefined;
  return { offsetM: Math.abs(offsetM), angleRad: Math.abs(angleRad) };
}

export function readGuideSet(state: DocumentState, guides: readonly ChosenGuide[]): SetGuide[] {
  const rows = new Map(readRows(state, 'guides').map((row) => [row.id, row]));
  return guides.map(({ id, kind, size, lengthM, stationM }, index) => {
    const row = id === undefined ? undefined : rows.get(id);
    const common = { id: id ?? `${index}`, kind, size, lengthM, stationM };
    return { ...common, openingM: row?.si('opening'), footWidthM: row?.si('footWidth') };
  });
}

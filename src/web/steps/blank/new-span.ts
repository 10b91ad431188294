import { spanSigmaM } from '../../../engine/sureness/span-offers.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';

interface NewSpan {
  /** The place in the order of the set-ups. */
  order: number;
  newRowId(): string;
}

/** The changes that lay out a stretch on two supports: its sag with nothing hung, and under a weight to be chosen. */
export function newSpan({ order, newRowId }: NewSpan): Change[] {
  const [id, bare, loaded] = [newRowId(), newRowId(), newRowId()];
  return [
    ...rowChanges('setups', id, {
      order,
      kind: 'span',
      place: 'supports',
      sigma: { si: spanSigmaM, text: `${1000 * spanSigmaM} mm` },
    }),
    ...rowChanges('tests', bare, { order: 0, setup: id, hung: { si: 0, text: '0 g' } }),
    { path: ['tests', loaded, 'order'], value: 1 },
    { path: ['tests', loaded, 'setup'], value: id },
  ];
}

import { spanSigmaM } from '../../../engine/sureness/span-offers.ts';
import type { Change } from '../../../record/operation.ts';

interface NewSpan {
  /** The place in the order of the set-ups. */
  order: number;
  newRowId(): string;
}

/** The changes that lay out a stretch on two supports: its sag with nothing hung, and under a weight to be chosen. */
export function newSpan({ order, newRowId }: NewSpan): Change[] {
  const [id, bare, loaded] = [newRowId(), newRowId(), newRowId()];
  return [
    { path: ['setups', id, 'order'], value: order },
    { path: ['setups', id, 'kind'], value: 'span' },
    { path: ['setups', id, 'place'], value: 'supports' },
    { path: ['setups', id, 'sigma'], value: { si: spanSigmaM, text: `${1000 * spanSigmaM} mm` } },
    { path: ['tests', bare, 'order'], value: 0 },
    { path: ['tests', bare, 'setup'], value: id },
    { path: ['tests', bare, 'hung'], value: { si: 0, text: '0 g' } },
    { path: ['tests', loaded, 'order'], value: 1 },
    { path: ['tests', loaded, 'setup'], value: id },
  ];
}

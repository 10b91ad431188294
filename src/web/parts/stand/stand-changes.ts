import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { FieldValue } from '../../../record/schema.ts';

export interface NewStand {
  order: number;
  madeAt: string;
  heldFromTip: FieldValue;
  /** Of the shop's wall; null where it says nothing. */
  standOff: FieldValue;
  newRowId(): string;
}

/** How many pictures are taken of one stand: nothing hung, a weight, about twice that. */
export const picturesOfStand = 3;

/** The rows of a stand and of the pictures still to be taken; what hangs is written with each picture. */
export function newStandChanges({ newRowId, ...stand }: NewStand): Change[] {
  const id = newRowId();
  const tests = Array.from({ length: picturesOfStand }, (_, order) =>
    rowChanges('loadTests', newRowId(), {
      order,
      madeAt: stand.madeAt,
      rod: 'bare',
      stand: id,
      ...(order === 0 ? { hung: { si: 0, text: '0 g' } } : {}),
    }),
  );
  return [...rowChanges('stands', id, stand), ...tests.flat()];
}

import type { Choices } from '../../../engine/flow/choices.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { keptMark } from '../../../words/tape.ts';

export interface MarkWriting {
  choices: Choices;
  system: UnitSystem;
  newRowId(): string;
}

/**
 * The changes that put guides at these stations. Guides that so far only stood for common practice become rows
 * of the record, with their places; their heights and masses stay open, to be measured.
 */
export function markChanges(fromTipM: readonly number[], writing: MarkWriting): Change[] {
  const { choices, system } = writing;
  return choices.guides.flatMap((guide, index) => {
    const value = keptMark(fromTipM[index], system);
    if (guide.id !== undefined) {
      const stands = guide.stationM !== undefined && Math.abs(guide.stationM - fromTipM[index]) < 1e-7;
      return stands ? [] : [{ path: ['guides', guide.id, 'station'], value } satisfies Change];
    }
    const row = writing.newRowId();
    return rowChanges('guides', row, {
      order: index + 1,
      kind: guide.kind,
      size: guide.size,
      station: value,
    }) satisfies Change[];
  });
}

import type { TurnedSection } from '../engine/rotation/turned-section.ts';
import type { DocumentState } from './operation.ts';
import { type RowReader, readRows } from './read-values.ts';

/** One reading: a dial gauge at mid-span, or a tape or rule at the tip of a clamped section. */
export const turnSigmaM = { span: 0.0001, clamp: 0.001 } as const;

/** The sections that were turned, in the order they were taken up. */
export function readTurnedSections(state: DocumentState): TurnedSection[] {
  const turns = readRows(state, 'turnReadings');
  return readRows(state, 'turnings').flatMap((row) => {
    const sectionId = row.text('section');
    const own = turns.filter((turn) => turn.text('turning') === row.id && !turn.flag('setAside'));
    return sectionId === undefined ? [] : [turnedSection(row, sectionId, own)];
  });
}

function turnedSection(row: RowReader, sectionId: string, turns: readonly RowReader[]): TurnedSection {
  const held = row.text('held') === 'clamp' ? 'clamp' : 'span';
  return {
    id: row.id,
    sectionId,
    held,
    loadsKg: [row.si('loadA') ?? 0, row.si('loadB')],
    sigmaM: row.si('sigma') || turnSigmaM[held],
    turns: turns.map((turn) => ({
      id: turn.id,
      turnRad: turn.si('turn'),
      dropsM: [turn.si('dropA'), turn.si('dropB')],
    })),
  };
}

import { useEffect, useRef } from 'react';
import type { FieldValue } from '../../record/schema.ts';
import type { Conflict } from '../store/conflicts.ts';
import type { StoreSnapshot } from '../store/document-store.ts';

/** Says when two devices changed one field without knowing of each other: which value stands, which is in the history. */
export function useSayConflicts({ conflicts }: StoreSnapshot, say: (text: string) => void): void {
  const said = useRef(0);
  useEffect(() => {
    for (const conflict of conflicts.slice(said.current)) say(conflictWords(conflict));
    said.current = conflicts.length;
  }, [conflicts, say]);
}

function conflictWords({ path, kept, lost, oursKept }: Conflict): string {
  const field = path[2].replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  const whose = oursKept ? 'yours' : 'the other’s';
  return `Another device changed the ${field} at the same time: ${whose}, ${shown(kept)}, is kept; ${shown(lost)} is in the history.`;
}

function shown(value: FieldValue): string {
  if (value === null) return 'empty';
  return typeof value === 'object' ? value.text : String(value);
}

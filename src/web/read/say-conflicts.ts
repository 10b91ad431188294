import { useEffect, useRef } from 'react';
import { fieldName, shownValue, type Teller } from '../../words/history.ts';
import type { Conflict } from '../store/conflicts.ts';
import type { StoreSnapshot } from '../store/document-store.ts';
import { useShop } from './shop.tsx';

/** Says when two devices changed one field without knowing of each other: which value stands, which is in the history. */
export function useSayConflicts({ conflicts, document }: StoreSnapshot, say: (text: string) => void): void {
  const { reader } = useShop();
  const said = useRef(0);
  useEffect(() => {
    for (const conflict of conflicts.slice(said.current))
      say(conflictWords(conflict, { document, ...reader }));
    said.current = conflicts.length;
  }, [conflicts, document, reader, say]);
}

/** One sentence, the same on both sides but for whose value it is. */
export function conflictWords({ path, kept, lost, oursKept }: Conflict, teller: Teller): string {
  const shown = (value: Conflict['kept']) => shownValue(path, value, teller);
  const whose = oursKept ? 'yours' : 'the other’s';
  return `Another device changed “${fieldName(path, teller.document)}” at the same time: the later, ${whose}, ${shown(kept)}, is kept; the earlier, ${shown(lost)}, is in the history.`;
}

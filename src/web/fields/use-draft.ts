import { useRef, useState } from 'react';
import type { Objection } from '../../record/operation.ts';
import type { FieldValue } from '../../record/schema.ts';
import type { Typed } from './read-typed.ts';

interface DraftOf {
  /** What is kept, as it is written. */
  shown: string;
  read(draft: string): Typed;
  write(value: FieldValue): Objection[];
}

export interface Draft {
  /** Undefined while the field shows what is kept. */
  draft: string | undefined;
  text: string;
  typed: Typed | undefined;
  refused: boolean;
  /** Why what is typed was not kept. */
  trouble: string | undefined;
  type(text: string): void;
  drop(): void;
  /** Whether the field may be left. */
  keep(): boolean;
}

/**
 * What is being typed, over what is kept. Enter or leaving the field keeps it, Escape takes the typing back. What
 * cannot be read stays as typed, says why, and writes nothing.
 */
export function useDraft({ shown, read, write }: DraftOf): Draft {
  const [draft, setDraft] = useState<string>();
  const [objection, setObjection] = useState<string>();
  /** Leaving after Enter must not keep the same typing twice. */
  const kept = useRef<string>(undefined);
  const typed = draft === undefined ? undefined : read(draft);
  const put = (text: string | undefined) => {
    kept.current = undefined;
    setObjection(undefined);
    setDraft(text);
  };
  const keep = (): boolean => {
    if (draft === undefined || kept.current === draft) return typed?.ok !== false;
    if (!typed?.ok) return false;
    kept.current = draft;
    const objections = draft.trim() === shown ? [] : write(typed.value);
    setObjection(objections[0]?.message);
    if (objections.length === 0) setDraft(undefined);
    return objections.length === 0;
  };
  return {
    draft,
    text: draft ?? shown,
    typed,
    refused: typed?.ok === false || objection !== undefined,
    trouble: typed?.ok === false ? typed.trouble : objection,
    type: put,
    drop: () => put(undefined),
    keep,
  };
}

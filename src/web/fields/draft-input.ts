import type { KeyboardEvent } from 'react';
import { focusNextField } from './next-field.ts';
import type { Draft } from './use-draft.ts';

/** What an input that holds a draft is given. */
export function draftInput(draft: Draft) {
  return {
    value: draft.text,
    'data-draft': draft.draft !== undefined,
    'aria-invalid': draft.refused || undefined,
    onChange: (event: { target: { value: string } }) => draft.type(event.target.value),
    onBlur: draft.keep,
  };
}

/** Escape takes the typing back; Enter keeps it and goes to the next field. */
export function draftKeys(draft: Draft) {
  return (event: KeyboardEvent<HTMLInputElement | HTMLTextAreaElement>) => {
    if (event.key === 'Escape') draft.drop();
    if (event.key !== 'Enter') return;
    event.preventDefault();
    if (draft.keep()) focusNextField(event.currentTarget);
  };
}

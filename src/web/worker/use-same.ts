import { useRef } from 'react';

/**
 * The object handed in before, as long as the new one says the same: what is made anew from the record at every
 * change is then sent to the worker, and calculated, only when it has truly changed. For plain data.
 */
export function useSame<T>(value: T): T {
  const kept = useRef({ value, text: JSON.stringify(value) });
  if (kept.current.value !== value) {
    const text = JSON.stringify(value);
    if (text !== kept.current.text) kept.current = { value, text };
  }
  return kept.current.value;
}

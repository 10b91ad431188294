import { type RefObject, useLayoutEffect, useRef } from 'react';

/**
 * Shutting the fields of a weight would drop the focus, and what is typed with it: it goes to the tick that opens them,
 * and from there to the first drop still to be read.
 */
export function useGateFocus(gated: boolean): RefObject<HTMLFieldSetElement | null> {
  const column = useRef<HTMLFieldSetElement>(null);
  const was = useRef(gated);
  useLayoutEffect(() => {
    if (gated === was.current) return;
    was.current = gated;
    const focused = document.activeElement;
    const isShut = focused instanceof HTMLInputElement && focused.disabled;
    if (gated && isShut && column.current?.contains(focused)) focusFirst(column.current, '.gate input');
    if (!gated && focused === document.body) focusFirst(column.current, '[data-field]:placeholder-shown');
  }, [gated]);
  return column;
}

function focusFirst(column: HTMLElement | null, selector: string): void {
  column?.querySelector<HTMLInputElement>(selector)?.focus();
}

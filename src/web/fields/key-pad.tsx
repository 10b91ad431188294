import { useEffect, useState } from 'react';
import { useBenchView } from '../read/colours.ts';

const fractions = ['1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'];
const keys = ['7', '8', '9', 'in', 'g', '4', '5', '6', 'mm', 'oz', '1', '2', '3', '/', '°', '0', '.', '-'];

/**
 * Large keys for a gloved hand, on a device that lies on the bench: digits, fractions, units, and Next. It types
 * into the field that has the focus; a keyboard goes on working beside it.
 */
export function KeyPad() {
  const { bench } = useBenchView();
  const field = useFocusedField(bench);
  useEffect(() => {
    // The keys have come up over it by now.
    field?.scrollIntoView({ block: 'nearest' });
  }, [field]);
  if (!field) return null;
  const key = (words: string, press: () => void, look = 'key') => (
    <button
      key={words}
      type="button"
      className={look}
      tabIndex={-1}
      // The field must keep the focus, or it would take the typing as done.
      onPointerDown={(event) => {
        event.preventDefault();
        press();
      }}
    >
      {words}
    </button>
  );
  return (
    <aside className="key-pad screen-only" aria-label="Keys for the bench">
      <div className="key-row">{fractions.map((text) => key(text, () => typeText(field, ` ${text}`)))}</div>
      <div className="key-grid">
        {keys.map((text) => key(text, () => typeText(field, /[a-z]/.test(text) ? ` ${text}` : text)))}
        {key('delete', () => deleteBefore(field), 'key key-word')}
        {key('next', () => pressEnter(field), 'key key-next')}
      </div>
    </aside>
  );
}

/** The quantity field under the hand, as long as one has the focus. */
function useFocusedField(wanted: boolean): HTMLInputElement | undefined {
  const [field, setField] = useState<HTMLInputElement>();
  useEffect(() => {
    if (!wanted) return setField(undefined);
    const look = () => {
      const focused = document.activeElement;
      setField(focused instanceof HTMLInputElement && focused.inputMode === 'none' ? focused : undefined);
    };
    look();
    document.addEventListener('focusin', look);
    document.addEventListener('focusout', look);
    return () => {
      document.removeEventListener('focusin', look);
      document.removeEventListener('focusout', look);
    };
  }, [wanted]);
  return field;
}

/** Puts text in at the caret; a space is not doubled, nor put at the beginning. */
function typeText(field: HTMLInputElement, text: string): void {
  const [from, to] = [field.selectionStart ?? field.value.length, field.selectionEnd ?? field.value.length];
  const before = field.value.slice(0, from);
  const put = before === '' || before.endsWith(' ') ? text.trimStart() : text;
  write(field, before + put + field.value.slice(to), from + put.length);
}

function deleteBefore(field: HTMLInputElement): void {
  const [from, to] = [field.selectionStart ?? 0, field.selectionEnd ?? 0];
  const start = from === to ? Math.max(0, from - 1) : from;
  write(field, field.value.slice(0, start) + field.value.slice(to), start);
}

/** As if typed: React hears of it through the element's own setter and an input event. */
function write(field: HTMLInputElement, value: string, caret: number): void {
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, value);
  field.dispatchEvent(new Event('input', { bubbles: true }));
  field.setSelectionRange(caret, caret);
}

function pressEnter(field: HTMLInputElement): void {
  field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
}

import { type ReactNode, useId, useRef, useState } from 'react';
import type { Change, Path } from '../../record/operation.ts';
import type { DocumentKind, FieldKind } from '../../record/schema.ts';
import { findField } from '../../record/validate.ts';
import { echoOf, showQuantity } from '../../words/quantity-text.ts';
import { useBenchView } from '../read/colours.ts';
import { useShop } from '../read/shop.tsx';
import { quantityOf } from '../read/values.ts';
import { FieldLine } from './field-line.tsx';
import { focusNextField } from './next-field.ts';
import { useFieldPlace } from './place.ts';
import { readTyped } from './read-typed.ts';
import { standardOf } from './standard.ts';

export interface QuantityFieldProps {
  label: string;
  path: Path;
  /** In a table the column's heading is the visible label; it is still read aloud. */
  labelHidden?: boolean;
  /** What undo calls it; the label where left out. */
  gesture?: string;
  /** Shown pale in an empty field: what will be assumed. */
  placeholder?: string;
  hint?: ReactNode;
  /** Where what is kept comes from, such as the rack. */
  origin?: string;
  disabled?: boolean;
  /** Enter in the field before passes it over: it is seldom changed. */
  passedOver?: boolean;
  /** Written together with the first value, such as the row it stands in. */
  also?: readonly Change[];
}

/**
 * A length, mass, angle or duration as a person writes it. What was understood stands under it before it is
 * kept; Enter or leaving the field keeps it, Escape takes the typing back. What cannot be read stays as typed,
 * says why, and writes nothing.
 */
export function QuantityField(props: QuantityFieldProps) {
  const { label, path, labelHidden, placeholder, hint, disabled, passedOver } = props;
  const id = useId();
  const { bench } = useBenchView();
  const field = useDraft(props);
  const standard = standardOf(useFieldPlace(), path);
  const pale = standard.text ?? placeholder;
  const describedBy = [`${id}-line`, hint ? `${id}-hint` : ''].join(' ').trim();
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden ? 'visually-hidden' : 'field-label'}>
        {label}
      </label>
      <input
        id={id}
        data-field={passedOver ? undefined : ''}
        data-path={path.join('/')}
        data-draft={field.draft !== undefined}
        className="field-input figures"
        type="text"
        inputMode={bench ? 'none' : 'text'}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        enterKeyHint="next"
        value={field.text}
        // A placeholder takes no markup, and the fraction slash alone is ill set by most fonts.
        placeholder={pale?.replaceAll('⁄', '/')}
        disabled={disabled}
        aria-invalid={field.refused || undefined}
        aria-describedby={describedBy}
        onChange={(event) => field.type(event.target.value)}
        onBlur={field.keep}
        onKeyDown={(event) => {
          if (event.key === 'Escape') field.drop();
          if (event.key !== 'Enter') return;
          event.preventDefault();
          if (field.keep()) focusNextField(event.currentTarget);
        }}
      />
      <FieldLine
        id={`${id}-line`}
        trouble={field.trouble}
        echo={field.text === '' ? standard.from : [field.echo, props.origin].filter(Boolean).join(' · ')}
      />
      {hint && (
        <span id={`${id}-hint`} className="field-hint">
          {hint}
        </span>
      )}
    </div>
  );
}

/** What is being typed, over what is kept; `draft` is undefined while the field shows what is kept. */
function useDraft({ label, path, gesture, also = [] }: QuantityFieldProps) {
  const { system } = useShop();
  const place = useFieldPlace();
  const [draft, setDraft] = useState<string>();
  const [writeTrouble, setWriteTrouble] = useState<string>();
  /** Leaving after Enter must not keep the same typing twice. */
  const kept = useRef<string>(undefined);
  const kind = quantityKind(place.kind, path);
  const stored = quantityOf(place.value(path));
  const shown = stored ? showQuantity(stored, kind.dimension, system) : { text: '', echo: '' };
  const typed = draft === undefined ? undefined : readTyped(draft, kind, system);

  const keep = (): boolean => {
    if (draft === undefined || kept.current === draft) return typed?.ok !== false;
    if (!typed?.ok) return false;
    kept.current = draft;
    const unchanged = draft.trim() === shown.text;
    const findings = unchanged
      ? []
      : place.write(gesture ?? label.toLowerCase(), [{ path, value: typed.value }, ...also]);
    setWriteTrouble(findings[0]?.message);
    if (findings.length === 0) setDraft(undefined);
    return findings.length === 0;
  };
  return {
    draft,
    text: draft ?? shown.text,
    refused: typed?.ok === false || writeTrouble !== undefined,
    trouble: typed?.ok === false ? typed.trouble : (writeTrouble ?? place.trouble(path)),
    echo: typed?.ok ? echoOf(draft ?? '', typed.understood) : shown.echo,
    type: (text: string) => {
      kept.current = undefined;
      setWriteTrouble(undefined);
      setDraft(text);
    },
    drop: () => {
      setWriteTrouble(undefined);
      setDraft(undefined);
    },
    keep,
  };
}

function quantityKind(document: DocumentKind, path: Path): Extract<FieldKind, { kind: 'quantity' }> {
  const kind = findField(document, path);
  if (typeof kind === 'string' || kind.kind !== 'quantity')
    throw new Error(`${path.join('/')} is no quantity of a ${document}`);
  return kind;
}

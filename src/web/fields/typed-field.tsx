import { plainMoney } from '../../engine/quote/money.ts';
import type { Field, FieldValue } from '../../record/schema.ts';
import { numberText, type Reader } from '../../words/field-text.ts';
import { echoOf, type ShownQuantity, showQuantity } from '../../words/quantity-text.ts';
import { useBenchView } from '../read/colours.ts';
import { quantityOf } from '../read/values.ts';
import { draftInput, draftKeys } from './draft-input.ts';
import { FieldFrame } from './field-frame.tsx';
import { readTyped } from './read-typed.ts';
import { useDraft } from './use-draft.ts';
import { type FieldProps, useField } from './use-field.ts';

/** A quantity, a number or an amount as a person writes it. What was understood stands under it before it is kept. */
export function TypedField(props: FieldProps) {
  const { bench } = useBenchView();
  const { id, field, label, hint, reader, own, standard, trouble, write } = useField(props);
  const shown = shownIn(field, own, reader);
  const draft = useDraft({
    shown: shown.text,
    read: (text) => readTyped(text, field, reader),
    write,
  });
  const understood = draft.typed?.ok ? echoOf(draft.text, draft.typed.understood) : shown.echo;
  const inputMode = field.kind === 'number' && !field.holds ? 'decimal' : 'text';
  const unit = unitBehind(field, reader);
  return (
    <FieldFrame
      id={id}
      label={label}
      labelHidden={props.labelHidden}
      hint={hint}
      trouble={draft.trouble ?? (draft.typed?.ok === false ? undefined : trouble)}
      echo={draft.text === '' ? standard.from : [understood, props.origin].filter(Boolean).join(' · ')}
    >
      <span className="field-with-unit">
        <input
          id={id}
          data-field={props.passedOver ? undefined : ''}
          data-path={props.path.join('/')}
          {...draftInput(draft)}
          className="field-input figures"
          type="text"
          inputMode={bench && field.kind === 'quantity' ? 'none' : inputMode}
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          enterKeyHint="next"
          // A placeholder takes no markup, and the fraction slash alone is ill set by most fonts.
          placeholder={standard.text?.replaceAll('⁄', '/')}
          disabled={props.disabled}
          aria-describedby={hint ? `${id}-line ${id}-hint` : `${id}-line`}
          onKeyDown={draftKeys(draft)}
        />
        {unit && unit !== '×' && <span aria-hidden="true">{unit}</span>}
      </span>
    </FieldFrame>
  );
}

function shownIn(field: Field, own: FieldValue, reader: Reader): ShownQuantity {
  const stored = quantityOf(own);
  if (field.kind === 'quantity')
    return stored ? showQuantity(stored, field.dimension, reader.units) : { text: '', echo: '' };
  if (field.kind !== 'number' || typeof own !== 'number') return { text: '', echo: '' };
  if (field.holds === 'money') return { text: plainMoney(own, reader.currency), echo: '' };
  return { text: field.holds ? numberText(field, own, reader) : String(own), echo: '' };
}

function unitBehind(field: Field, { currency }: Reader): string | undefined {
  if (field.kind !== 'number') return undefined;
  return field.holds === 'money' ? currency.code : field.holds ? undefined : field.unit;
}

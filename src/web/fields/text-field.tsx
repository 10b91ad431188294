import { draftInput, draftKeys } from './draft-input.ts';
import { FieldFrame } from './field-frame.tsx';
import { readTyped } from './read-typed.ts';
import { useDraft } from './use-draft.ts';
import { type FieldProps, useField } from './use-field.ts';

/** A name or a note; kept on Enter or on leaving the field. Of several lines, Enter begins a new one. */
export function TextField(props: FieldProps) {
  const { id, field, label, hint, reader, own, standard, trouble, write } = useField(props);
  const shown = typeof own === 'string' ? own : '';
  const draft = useDraft({ shown, read: (text) => readTyped(text, field, reader), write });
  const common = {
    id,
    className: 'field-input',
    'data-path': props.path.join('/'),
    ...draftInput(draft),
    placeholder: standard.text,
    'aria-describedby': `${id}-line`,
  };
  const oneLine = {
    ...common,
    'data-field': props.passedOver ? undefined : '',
    autoComplete: 'off',
    onKeyDown: draftKeys(draft),
  };
  return (
    <FieldFrame
      id={id}
      label={label}
      labelHidden={props.labelHidden}
      hint={hint}
      trouble={draft.trouble ?? trouble}
      folds
    >
      {field.lines && <textarea {...common} rows={field.lines} />}
      {!field.lines && props.folds && (
        <textarea {...oneLine} className="field-input field-folds" rows={1} enterKeyHint="next" />
      )}
      {!field.lines && !props.folds && <input {...oneLine} type="text" />}
    </FieldFrame>
  );
}

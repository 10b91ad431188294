import type { Field } from '../../record/schema.ts';
import { FewChoices, type Option, optionsIn } from './few-choices.tsx';
import { FieldFrame } from './field-frame.tsx';
import { FieldLine } from './field-line.tsx';
import { type FieldProps, useField } from './use-field.ts';

/** One of a few, all to be seen. */
export function ChoiceField(props: FieldProps) {
  const { id, field, label, own, standard, write } = useField(props);
  const stored = own ?? standard.value;
  return (
    <FewChoices
      label={label}
      labelHidden={props.labelHidden}
      options={optionsOf(field, props)}
      value={typeof stored === 'string' ? stored : ''}
      choose={write}
      describedBy={`${id}-line`}
    >
      {own === null && field.origin && <FieldLine id={`${id}-line`} echo={standard.from} />}
    </FewChoices>
  );
}

/** One of several, folded up: the device's own list, which every tablet shows large. */
export function PickField(props: FieldProps) {
  const { id, field, label, hint, own, standard, trouble, write } = useField(props);
  const stored = own ?? standard.value;
  const chosen = typeof stored === 'string' ? idOf(field, stored) : '';
  const options = optionsOf(field, props);
  const known = options.some(({ value }) => value === chosen);
  return (
    <FieldFrame id={id} label={label} labelHidden={props.labelHidden} hint={hint} trouble={trouble} folds>
      <select
        id={id}
        className="field-input"
        data-path={props.path.join('/')}
        value={chosen}
        aria-describedby={`${id}-line`}
        onChange={(event) => write(event.target.value === '' ? null : event.target.value)}
      >
        {(chosen === '' || standard.value === null) && <option value="">{field.empty}</option>}
        {chosen !== '' && !known && <option value={chosen}>{chosen}</option>}
        {options.map(({ value, name }) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

/** Earlier versions kept the name of what was picked. */
function idOf(field: Field, stored: string): string {
  if (field.kind !== 'text') return stored;
  return Object.entries(field.names ?? {}).find(([, name]) => name === stored)?.[0] ?? stored;
}

function optionsOf(field: Field, { options }: FieldProps): readonly Option[] {
  if (options) return options;
  if (field.kind === 'text') return optionsIn(field.names ?? {});
  if (field.kind !== 'choice') throw new Error(`${field.name} has no options`);
  return field.of.map((value) => ({ value, name: field.names[value] }));
}

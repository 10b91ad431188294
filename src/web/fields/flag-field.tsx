import { Checkbox } from 'react-aria-components';
import { type FieldProps, useField } from './use-field.ts';

/** The builder's word on something: yes or not. */
export function FlagField(props: FieldProps) {
  const { label, own, standard, write } = useField(props);
  return (
    <Checkbox
      className="flag"
      data-path={props.path.join('/')}
      isSelected={(own ?? standard.value) === true}
      onChange={write}
    >
      <span className="flag-box" aria-hidden="true" />
      <span>{label}</span>
    </Checkbox>
  );
}

import { findField } from '../../record/validate.ts';
import { ChoiceField, PickField } from './choice-field.tsx';
import { ColourField } from './colour-field.tsx';
import { FlagField } from './flag-field.tsx';
import { MomentField } from './moment-field.tsx';
import { useFieldPlace } from './place.ts';
import { TextField } from './text-field.tsx';
import { TypedField } from './typed-field.tsx';
import type { FieldProps } from './use-field.ts';

/** The field at a path, as its declaration wants it shown. */
export function Field(props: FieldProps) {
  const field = findField(useFieldPlace().kind, props.path);
  if (typeof field === 'string') throw new Error(field);
  switch (field.kind) {
    case 'quantity':
    case 'number':
      return <TypedField {...props} />;
    case 'choice':
      return field.folded ? <PickField {...props} /> : <ChoiceField {...props} />;
    case 'flag':
      return <FlagField {...props} />;
    case 'instant':
      return <MomentField {...props} />;
    default:
      if (props.options) return <PickField {...props} />;
      return field.kind === 'text' && field.colour ? <ColourField {...props} /> : <TextField {...props} />;
  }
}

export interface FieldsRowProps {
  of: string;
  row?: string;
  names: readonly string[];
  /** Where a field's unit hangs on another field. */
  units?: Readonly<Record<string, string>>;
}

/** Several fields of one row beside each other; Enter goes from one to the next. */
export function FieldsRow({ of, row = '-', names, units = {} }: FieldsRowProps) {
  return (
    <div className="fields-row" data-group="">
      {names.map((name) => (
        <Field key={name} path={[of, row, name]} unit={units[name]} />
      ))}
    </div>
  );
}

import type { Path } from '../../record/operation.ts';
import type { Field as DeclaredField } from '../../record/schema.ts';
import { findField } from '../../record/validate.ts';
import { ChoiceField, PickField } from './choice-field.tsx';
import { ColourField } from './colour-field.tsx';
import { FlagField } from './flag-field.tsx';
import { MomentField } from './moment-field.tsx';
import { type FieldPlace, useFieldPlace } from './place.ts';
import { TextField } from './text-field.tsx';
import { TypedField } from './typed-field.tsx';
import type { FieldProps } from './use-field.ts';

/** The field at a path, as its declaration wants it shown; none where it is not asked of this rod. */
export function Field(props: FieldProps) {
  const place = useFieldPlace();
  const field = findField(place.kind, props.path);
  if (typeof field === 'string') throw new Error(field);
  if (place.value(props.path) === null && !isAskedOf(field, place)) return null;
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
      if (props.options || (field.kind === 'text' && field.names)) return <PickField {...props} />;
      return field.kind === 'text' && field.colour ? <ColourField {...props} /> : <TextField {...props} />;
  }
}

function isAskedOf({ rods }: DeclaredField, { kind, value }: FieldPlace): boolean {
  if (!rods || kind !== 'build') return true;
  const path: Path = ['about', '-', 'rodKind'];
  const declared = findField(kind, path) as DeclaredField;
  return (rods as readonly unknown[]).includes(value(path) ?? declared.usual);
}

interface FieldsRowProps {
  of: string;
  row?: string;
  names: readonly string[];
  /** Where this rod has another word for it. */
  labels?: Readonly<Record<string, string>>;
  /** Where a field's unit hangs on another field. */
  units?: Readonly<Record<string, string>>;
}

/** Several fields of one row beside each other; Enter goes from one to the next. */
export function FieldsRow({ of, row = '-', names, labels = {}, units = {} }: FieldsRowProps) {
  return (
    <div className="fields-row" data-group="">
      {names.map((name) => (
        <Field key={name} path={[of, row, name]} label={labels[name]} unit={units[name]} />
      ))}
    </div>
  );
}

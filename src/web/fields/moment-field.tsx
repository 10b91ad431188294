import { FieldFrame } from './field-frame.tsx';
import { type FieldProps, useField } from './use-field.ts';

/** A day of the calendar, kept as noon of it in UTC, or a moment by the device's own clock; emptied, it is none. */
export function MomentField(props: FieldProps) {
  const { id, field, label, own, trouble, write } = useField(props);
  const day = field.kind === 'instant' && field.day === true;
  const keep = (typed: string) => {
    const at = new Date(day ? `${typed}T12:00:00.000Z` : typed);
    if (typed === '' && day) write(null);
    else if (!Number.isNaN(at.getTime())) write(at.toISOString());
  };
  const stored = typeof own === 'string' ? own : '';
  return (
    <FieldFrame id={id} label={label} labelHidden={props.labelHidden} trouble={trouble} folds>
      <input
        id={id}
        type={day ? 'date' : 'datetime-local'}
        className={day ? 'field-input' : 'field-input instant-input'}
        data-field={day ? '' : undefined}
        data-path={props.path.join('/')}
        value={stored === '' || day ? stored.slice(0, 10) : localText(new Date(stored))}
        aria-describedby={`${id}-line`}
        onChange={(event) => keep(event.target.value)}
      />
    </FieldFrame>
  );
}

/** `2026-03-01T09:30` in local time, as the browser's field writes it. */
function localText(at: Date): string {
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}

/** A day as people write it; empty for none. */
export function dayWords(instant: unknown): string {
  if (typeof instant !== 'string') return '';
  return new Date(instant).toLocaleDateString(undefined, { dateStyle: 'medium' });
}

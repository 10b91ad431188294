import { useId } from 'react';
import type { Path } from '../../record/operation.ts';
import { FieldLine } from './field-line.tsx';
import { useFieldPlace } from './place.ts';

/** A day of the calendar, kept as noon of it in UTC; emptied, it is no day again. */
export function DayField({ label, path }: { label: string; path: Path }) {
  const id = useId();
  const place = useFieldPlace();
  const stored = place.value(path);
  const keep = (typed: string) => {
    if (typed === '') place.write(label.toLowerCase(), [{ path, value: null }]);
    else if (/^\d{4}-\d\d-\d\d$/.test(typed))
      place.write(label.toLowerCase(), [{ path, value: `${typed}T12:00:00.000Z` }]);
  };
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <input
        id={id}
        type="date"
        className="field-input"
        data-field=""
        data-path={path.join('/')}
        value={typeof stored === 'string' ? stored.slice(0, 10) : ''}
        aria-describedby={`${id}-line`}
        onChange={(event) => keep(event.target.value)}
      />
      <FieldLine id={`${id}-line`} trouble={place.trouble(path)} folds />
    </div>
  );
}

/** A day as people write it; empty for none. */
export function dayWords(instant: unknown): string {
  if (typeof instant !== 'string') return '';
  return new Date(instant).toLocaleDateString(undefined, { dateStyle: 'medium' });
}

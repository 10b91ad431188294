import { useId } from 'react';
import type { Path } from '../../../record/operation.ts';
import { FieldLine } from '../../fields/field-line.tsx';
import { useFieldPlace } from '../../fields/place.ts';

/** A moment by the device's own clock, kept in UTC. */
export function InstantField({ label, path }: { label: string; path: Path }) {
  const id = useId();
  const place = useFieldPlace();
  const stored = place.value(path);
  const keep = (typed: string) => {
    const at = new Date(typed);
    if (!Number.isNaN(at.getTime())) place.write(label.toLowerCase(), [{ path, value: at.toISOString() }]);
  };
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <input
        id={id}
        type="datetime-local"
        className="field-input instant-input"
        data-path={path.join('/')}
        value={typeof stored === 'string' ? localText(new Date(stored)) : ''}
        aria-describedby={`${id}-line`}
        onChange={(event) => keep(event.target.value)}
      />
      <FieldLine id={`${id}-line`} trouble={place.trouble(path)} folds />
    </div>
  );
}

/** `2026-03-01T09:30` in local time, as the browser's field writes it. */
function localText(at: Date): string {
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}

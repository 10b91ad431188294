import { useId } from 'react';
import type { Path } from '../../record/operation.ts';
import { useFieldPlace } from '../fields/place.ts';

/** A colour by the device's own picker. */
export function ColourField({ label, path, unset }: { label: string; path: Path; unset: string }) {
  const id = useId();
  const place = useFieldPlace();
  const stored = place.value(path) ?? place.habit?.(path);
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <input
        id={id}
        type="color"
        className="field-input colour-input"
        data-path={path.join('/')}
        value={typeof stored === 'string' ? stored : unset}
        onChange={(event) => place.write(label.toLowerCase(), [{ path, value: event.target.value }])}
      />
    </div>
  );
}

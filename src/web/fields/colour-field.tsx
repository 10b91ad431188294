import { useId } from 'react';
import type { Path } from '../../record/operation.ts';
import { colourWords } from '../../words/colour-words.ts';
import { FieldLine } from './field-line.tsx';
import { useFieldPlace } from './place.ts';

/** A colour by the device's own picker. */
export function ColourField({ label, path, unset }: { label: string; path: Path; unset: string }) {
  const id = useId();
  const place = useFieldPlace();
  const own = place.value(path);
  const stored = own ?? place.habit?.(path);
  const colour = typeof stored === 'string' ? stored : unset;
  const origin = own !== null ? '' : typeof stored === 'string' ? ', this shop’s habit' : ', our own choice';
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
        value={colour}
        aria-describedby={`${id}-line`}
        onChange={(event) => place.write(label.toLowerCase(), [{ path, value: event.target.value }])}
      />
      <FieldLine id={`${id}-line`} echo={`${colourWords(colour)} (${colour})${origin}`} />
    </div>
  );
}

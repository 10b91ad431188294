import { colourWords } from '../../words/colour-words.ts';
import { FieldFrame } from './field-frame.tsx';
import { type FieldProps, useField } from './use-field.ts';

/** A colour by the device's own picker. */
export function ColourField(props: FieldProps) {
  const { id, label, own, standard, write } = useField(props);
  const colour = String(own ?? standard.value ?? '#000000');
  const origin = own === null ? `, ${standard.from ?? 'our choice'}` : '';
  return (
    <FieldFrame id={id} label={label} echo={`${colourWords(colour)} (${colour})${origin}`}>
      <input
        id={id}
        type="color"
        className="field-input colour-input"
        data-path={props.path.join('/')}
        value={colour}
        aria-describedby={`${id}-line`}
        onChange={(event) => write(event.target.value)}
      />
    </FieldFrame>
  );
}

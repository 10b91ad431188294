import { ChoiceField } from '../../fields/choice-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { textOf } from '../../read/values.ts';

/** What holds for the blank as a whole: material, mass, bound ferrules, strain levels. */
export function WholeBlankPart() {
  const sleeved = useBuild()
    .rows('sections')
    .some((row) => ['sleeve', 'put-over'].includes(textOf(row, 'joint') ?? ''));
  return (
    <Part
      folded
      holds={['blank/']}
      title="The whole blank"
      anchor="whole-blank"
      aside="material, series, ferrules, strain levels"
    >
      <div className="fields-row">
        <TextField label="Written on it" path={['blank', '-', 'label']} placeholder="label, number" />
        <TextField
          label="Series, as you call it"
          path={['blank', '-', 'series']}
          gesture="series of the blank"
          placeholder="one name, one series"
        />
        <QuantityField
          label="Mass of all sections, if not weighed singly"
          path={['blank', '-', 'mass']}
          gesture="mass of the blank"
        />
        <ChoiceField
          label="Material"
          path={['blank', '-', 'material']}
          unset="unknown"
          options={[
            { value: 'carbon', name: 'carbon' },
            { value: 'glass', name: 'glass' },
            { value: 'unknown', name: 'not known' },
          ]}
        />
      </div>
      <FlagField path={['blank', '-', 'ferrulesBound']} gesture="ferrules bound">
        The ferrules are wrapped, or tightly bound with tape or thread
      </FlagField>
      <details>
        <summary>Strain levels of this blank</summary>
        <div className="fields-row">
          <NumberField
            label="Warn from"
            unit="%"
            path={['blank', '-', 'strainCautionPercent']}
            placeholder="by material"
          />
          <NumberField
            label="Stop at"
            unit="%"
            path={['blank', '-', 'strainStopPercent']}
            placeholder="by material"
          />
        </div>
        <p className="small quiet">
          Left empty: carbon and unknown warn from 0.25 % and stop at 0.4 %, glass 0.6 % and 1 %. These are a
          judgement from published laminate strengths, not a promise that a blank will hold.
        </p>
      </details>
      {sleeved && (
        <Caution
          about="sleeves"
          brief="Bind sleeve ferrules before heavy loads."
          source="common practice, no source"
        >
          Unwrapped sleeve ferrules can split under heavy loads. Bind them before hanging more than the weight
          that drops the tip by a third of the length.
        </Caution>
      )}
    </Part>
  );
}

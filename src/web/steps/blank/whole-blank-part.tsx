import { materialOf, materials } from '../../../engine/bench/materials.ts';
import { Field } from '../../fields/field.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { textOf } from '../../read/values.ts';

/** What holds for the blank as a whole: material, mass, bound ferrules, strain levels. */
export function WholeBlankPart() {
  const { rows, single } = useBuild();
  const sleeved = rows('sections').some((row) => ['sleeve', 'put-over'].includes(textOf(row, 'joint') ?? ''));
  const { strain } = materials[materialOf(textOf(single('blank'), 'material'))];
  return (
    <Part
      folded
      holds={['blank/']}
      title="The whole blank"
      anchor="whole-blank"
      aside="material, series, ferrules, strain levels"
    >
      <div className="fields-row">
        <Field path={['blank', '-', 'label']} />
        <Field path={['blank', '-', 'series']} />
        <Field path={['blank', '-', 'mass']} />
        <Field path={['blank', '-', 'material']} />
      </div>
      <Field path={['blank', '-', 'ferrulesBound']} />
      <details>
        <summary>Strain levels of this blank</summary>
        <div className="fields-row">
          <Field path={['blank', '-', 'strainCautionPercent']} usual={strain.cautionPercent} />
          <Field path={['blank', '-', 'strainStopPercent']} usual={strain.stopPercent} />
        </div>
        <p className="small quiet">
          Pale levels go by the material: a judgement from published laminate strengths, not a promise that a
          blank will hold.
        </p>
      </details>
      {sleeved && (
        <Caution
          about="sleeves"
          brief="Bind sleeve ferrules before heavy loads."
          source="common practice, no source"
        >
          Unwrapped sleeve ferrules can split under heavy loads. Bind them before hanging more than the weight
          that drops the tip by a third of the length in front of the clamp.
        </Caution>
      )}
    </Part>
  );
}

import type { Row } from '../../../record/document.ts';
import { NumberField } from '../../fields/number-field.tsx';
import { PickField } from '../../fields/pick-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { textOf } from '../../read/values.ts';
import { jointNames } from './new-sections.ts';

/** The joint at a section's butt end: its kind decides what is to be measured. */
export function JointFields({ section, name, below }: { section: Row; name: string; below: string }) {
  const path = (field: string) => ['sections', section.id, field] as const;
  const kind = textOf(section, 'joint');
  return (
    <fieldset className="joint">
      <legend className="field-label">Joint to {below}</legend>
      <PickField
        label={`Kind of joint between ${name} and ${below}`}
        labelHidden
        path={path('joint')}
        unset=""
        options={[
          ...(kind === undefined ? [{ value: '', name: 'say which kind' }] : []),
          ...Object.entries(jointNames).map(([value, words]) => ({ value, name: words })),
        ]}
      />
      <div className="fields-two">
        {kind === 'spigot' ? (
          <>
            <QuantityField label="Gap when seated" path={path('spigotGap')} gesture={`gap below ${name}`} />
            <QuantityField
              label="Length of the plug"
              path={path('spigotLength')}
              gesture={`plug below ${name}`}
            />
          </>
        ) : (
          <QuantityField label="Overlap when seated" path={path('overlap')} gesture={`overlap of ${name}`} />
        )}
        <NumberField
          label="Times as stiff, if known"
          unit="×"
          path={path('jointStiffness')}
          placeholder="not stated"
        />
      </div>
    </fieldset>
  );
}

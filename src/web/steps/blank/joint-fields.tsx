import type { Row } from '../../../record/document.ts';
import { Field } from '../../fields/field.tsx';
import { textOf } from '../../read/values.ts';

/** The joint at a section's butt end: its kind decides what is to be measured. */
export function JointFields({ section, name, below }: { section: Row; name: string; below: string }) {
  const path = (field: string) => ['sections', section.id, field] as const;
  const kind = textOf(section, 'joint');
  return (
    <fieldset className="joint">
      <legend className="field-label">Joint to {below}</legend>
      <Field label={`Kind of joint between ${name} and ${below}`} labelHidden path={path('joint')} />
      <div className="fields-two">
        {kind === 'spigot' ? (
          <>
            <Field path={path('spigotGap')} />
            <Field path={path('spigotLength')} />
          </>
        ) : (
          <Field path={path('overlap')} />
        )}
        <Field path={path('jointStiffness')} />
      </div>
    </fieldset>
  );
}

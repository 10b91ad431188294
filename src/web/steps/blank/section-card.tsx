import { Button } from 'react-aria-components';
import { lineSideInWords } from '../../../engine/bench/line-side.ts';
import type { Row } from '../../../record/document.ts';
import { Field } from '../../fields/field.tsx';
import { siOf, textOf } from '../../read/values.ts';
import { DiameterFields } from './diameter-fields.tsx';
import { JointFields } from './joint-fields.tsx';

export interface SectionCardProps {
  section: Row;
  /** Counted from the tip, from 0. */
  index: number;
  below: Row | undefined;
  onRemove(): void;
}

/** What is measured of one section, from its own tip-side end, and how it joins the next. */
export function SectionCard({ section, index, below, onRemove }: SectionCardProps) {
  const name = textOf(section, 'name') ?? `section ${index + 1}`;
  const path = (field: string) => ['sections', section.id, field] as const;
  return (
    <fieldset className="section-card">
      <legend>
        <span className="section-number">{index + 1}</span>
        <span className="section-name">
          <Field label={`Name of section ${index + 1}`} labelHidden path={path('name')} />
        </span>
      </legend>
      <div className="fields-two">
        <Field path={path('length')} />
        <Field path={path('mass')} />
        <Field path={path('balanceFromOwnTip')} />
      </div>
      <DiameterFields section={section} name={name} />
      <p className="quiet small">{lineSideWords(section)}</p>
      {below && <JointFields section={section} name={name} below={textOf(below, 'name') ?? 'the next'} />}
      <Button className="plain small card-remove screen-only" onPress={onRemove}>
        Remove {name}
      </Button>
    </fieldset>
  );
}

function lineSideWords(section: Row): string {
  const angleRad = siOf(section, 'lineSideAngle');
  if (angleRad === undefined) return 'Line side not chosen; see Sweep and spine.';
  const [reference, method] = [textOf(section, 'lineSideReference'), textOf(section, 'lineSideMethod')];
  return `Line side ${lineSideInWords({ angleRad, reference, method })}.`;
}

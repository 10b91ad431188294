import { Button } from 'react-aria-components';
import type { Row } from '../../../record/document.ts';
import { lineSideInWords } from '../../../words/line-side.ts';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
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
          <TextField
            label={`Name of section ${index + 1}`}
            labelHidden
            path={path('name')}
            gesture={`name of section ${index + 1}`}
          />
        </span>
      </legend>
      <div className="fields-two">
        <QuantityField label="Length" path={path('length')} gesture={`length of ${name}`} />
        <QuantityField label="Mass" path={path('mass')} gesture={`mass of ${name}`} />
        <QuantityField
          label="Balance point"
          path={path('balanceFromOwnTip')}
          gesture={`balance point of ${name}`}
        />
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

import { Button } from 'react-aria-components';
import type { Row } from '../../../record/document.ts';
import { sectionName } from '../../../record/row-names.ts';
import type { Reader } from '../../../words/field-text.ts';
import { lineSideInWords } from '../../../words/line-side.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { useShop } from '../../read/shop.tsx';
import { siOf, textOf } from '../../read/values.ts';
import { DiameterFields } from './diameter-fields.tsx';
import { changesForLength } from './diameter-places.ts';

interface SectionCardProps {
  section: Row;
  /** Counted from the tip, from 0. */
  index: number;
  below: Row | undefined;
  /** Open at first: it is the one to measure next. */
  startOpen: boolean;
  /** Its diameters, for what it says folded and for finding their fields. */
  diameters: readonly Row[];
  onRemove(): void;
}

/** What is measured of one section, from its own tip-side end, and how it joins the next. */
export function SectionCard({ section, index, below, startOpen, diameters, onRemove }: SectionCardProps) {
  const { reader } = useShop();
  const inBrief = briefly(section, diameters, reader);
  const holds = [
    `sections/${section.id}/`,
    `diameters/${section.id}-d`,
    ...diameters.map(({ id }) => `diameters/${id}/`),
  ];
  const name = sectionName(section, index);
  const path = (field: string) => ['sections', section.id, field] as const;
  return (
    <Fold
      className="section-card"
      title={
        <h3>
          <span className="section-number">{index + 1}</span> {name}
        </h3>
      }
      aside={<Figure text={inBrief} />}
      startOpen={startOpen}
      holds={holds}
    >
      <div className="fields-two">
        <Field label={`Name of section ${index + 1}`} path={path('name')} pale={name} passedOver />
        <Field path={path('length')} also={(length) => changesForLength(section, diameters, length)} />
        <Field path={path('mass')} />
        <Field path={path('balanceFromOwnTip')} />
      </div>
      <DiameterFields section={section} name={name} />
      <p className="quiet small">{lineSideWords(section)}</p>
      {below && <JointFields section={section} name={name} below={sectionName(below, index + 1)} />}
      <Button className="plain small card-remove screen-only" onPress={onRemove}>
        Remove {name}
      </Button>
    </Fold>
  );
}

/** `29 1/4 in · 8.2 g · 3 diameters`. */
function briefly(section: Row, diameters: readonly Row[], { writer }: Reader): string {
  const measured = diameters.filter((row) => siOf(row, 'outside') !== undefined).length;
  const [lengthM, massKg] = [siOf(section, 'length'), siOf(section, 'mass')];
  const words = [
    lengthM === undefined ? 'no length yet' : writer.length(lengthM),
    massKg === undefined ? undefined : writer.mass(massKg),
    measured > 0 ? `${measured} ${measured === 1 ? 'diameter' : 'diameters'}` : 'no diameter yet',
  ];
  return words.filter((word) => word !== undefined).join(' · ');
}

function lineSideWords(section: Row): string {
  const angleRad = siOf(section, 'lineSideAngle');
  if (angleRad === undefined) return 'Line side not chosen; see Sweep and spine.';
  const [reference, method] = [textOf(section, 'lineSideReference'), textOf(section, 'lineSideMethod')];
  return `Line side ${lineSideInWords({ angleRad, reference, method })}.`;
}

/** The joint at a section's butt end: its kind decides what is to be measured. */
function JointFields({ section, name, below }: { section: Row; name: string; below: string }) {
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

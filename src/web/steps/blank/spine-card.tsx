import { Button } from 'react-aria-components';
import type { TurnedReading, TurnedSection } from '../../../engine/rotation/turned-section.ts';
import type { Row } from '../../../record/document.ts';
import { sectionName } from '../../../record/row-names.ts';
import { lineSideInWords } from '../../../words/line-side.ts';
import { Field } from '../../fields/field.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { useBuild } from '../../read/build-context.ts';
import { siOf, textOf } from '../../read/values.ts';
import { newTurning } from './new-turning.ts';
import { TurningRows } from './turning-rows.tsx';
import { TurnsDrawing } from './turns-drawing.tsx';
import { TurnsTable } from './turns-table.tsx';
import { TurnsWords } from './turns-words.tsx';

interface SpineCardProps {
  /** The section. */
  row: Row;
  index: number;
  turned: readonly { section: TurnedSection; reading: TurnedReading }[];
}

/** One section: its turnings with what they say, and under them the side that the builder chose. */
export function SpineCard({ row, index, turned }: SpineCardProps) {
  const { write, newRowId } = useBuild();
  const name = sectionName(row, index);
  const add = (steps: 4 | 8) =>
    write('turnSection', newTurning(row.id, { steps, order: index + turned.length / 100, newRowId }));
  return (
    <Fold
      className="spine-card"
      label={`Sweep and spine of ${name}`}
      title={
        <h3>
          <span className="section-number">{index + 1}</span> {name}
        </h3>
      }
      aside={
        turned.length > 0
          ? `${turned.length === 1 ? 'turned' : `turned ${turned.length} times`}`
          : 'not turned yet'
      }
      holds={[
        `sections/${row.id}/lineSide`,
        ...turned.flatMap(({ section }) => [
          `turnings/${section.id}/`,
          ...section.turns.map(({ id }) => `turnReadings/${id}/`),
        ]),
      ]}
    >
      <div data-group="leads" className="spine-inside">
        {turned.map(({ section, reading }) => (
          <div key={section.id} className="turning">
            <TurningRows section={section} name={name} />
            <div className="turning-answer">
              <TurnsWords section={section} reading={reading} />
              {reading.request && (
                <>
                  <TurnsDrawing
                    request={reading.request}
                    lineSideRad={siOf(row, 'lineSideAngle')}
                    name={name}
                  />
                  <TurnsTable request={reading.request} name={name} />
                </>
              )}
            </div>
          </div>
        ))}
        {turned.length === 0 && <TurnButtons name={name} onTurn={add} />}
        <LineSideFields row={row} name={name} />
      </div>
    </Fold>
  );
}

function TurnButtons({ name, onTurn }: { name: string; onTurn: (steps: 4 | 8) => void }) {
  return (
    <div className="turning-start screen-only">
      <Button className="button" onPress={() => onTurn(8)}>
        Turn {name} in 8 steps
      </Button>
      <Button className="button" onPress={() => onTurn(4)}>
        In 4 steps, for the stiffness only
      </Button>
    </div>
  );
}

/** The builder's choice; whatever was read, nothing is filled in for him. */
function LineSideFields({ row, name }: { row: Row; name: string }) {
  const path = (field: string) => ['sections', row.id, field] as const;
  const angleRad = siOf(row, 'lineSideAngle');
  const side = {
    angleRad: angleRad ?? 0,
    reference: textOf(row, 'lineSideReference'),
    method: textOf(row, 'lineSideMethod'),
  };
  return (
    <fieldset className="line-side">
      <legend className="field-label">Line side of {name}, your choice</legend>
      <div className="fields-row">
        <Field path={path('lineSideAngle')} />
        <Field path={path('lineSideReference')} />
        <Field path={path('lineSideMethod')} />
      </div>
      <p className="quiet small" role="status">
        {angleRad === undefined
          ? 'Not chosen. Guides on the straightest axis, on the soft side, opposite it: all are in use and disputed (common practice, no source).'
          : `Guides stand at ${lineSideInWords(side)}.`}
      </p>
    </fieldset>
  );
}

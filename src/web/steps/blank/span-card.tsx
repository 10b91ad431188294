import type { Row } from '../../../record/document.ts';
import { setupName } from '../../../record/row-names.ts';
import { Field } from '../../fields/field.tsx';
import { quantityOf } from '../../read/values.ts';
import type { SetupRows } from './reading-rows.ts';
import { SetupFold } from './setup-more.tsx';
import { SpanSketch } from './span-sketch.tsx';

/** A stretch on two supports: where they stand, where it is loaded, and the sag under every weight. */
export function SpanCard({ rows, index }: { rows: SetupRows; index: number }) {
  const { setup, tests } = rows;
  const name = setupName(setup, index);
  const path = (field: string) => ['setups', setup.id, field] as const;
  return (
    <section className="setup-card" aria-label={name}>
      <div className="setup-place">
        <h3>
          <span className="section-number">{index + 1}</span> {name}
        </h3>
        <SpanSketch rows={rows} />
        <div className="fields-two">
          <Field path={path('supportTipSide')} passedOver />
          <Field path={path('loadFromTip')} passedOver />
          <Field path={path('supportButtSide')} passedOver />
        </div>
        <p className="quiet small">
          Read the sag beside the weight, from a thread drawn taut over both supports down to the middle of
          the blank. Two padded supports that stand level, the blank free to slide on them.
        </p>
      </div>
      <div className="test-columns">
        {tests.map(({ test }, order) => (
          <fieldset className="test-column" key={test.id}>
            <legend className="visually-hidden">
              Weight {order + 1} of {name}
            </legend>
            <Field path={['tests', test.id, 'hung']} passedOver />
            <Field label={sagWords(test)} path={['tests', test.id, 'sag']} />
          </fieldset>
        ))}
      </div>
      <SetupFold id={setup.id} name={name} fields={['day', 'sigma']} />
    </section>
  );
}

/** Unloaded the stretch shows its own weight and bow, which are no stiffness. */
function sagWords(test: Row): string {
  const hung = quantityOf(test.fields.hung);
  if (hung?.si === 0) return 'Sag with nothing hung';
  return hung ? `Sag under ${hung.text}` : 'Sag under it';
}

import { Button } from 'react-aria-components';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { AddPhoto } from '../../parts/photo/add-photo.tsx';
import { rowChanges } from '../../parts/photo/place-changes.ts';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { PhotoPanel } from './photo-panel.tsx';
import { TestResult } from './test-result.tsx';

export interface TestCardProps {
  test: LoadTest;
  number: number;
  /** The test before this one, to compare with. */
  before: LoadTest | undefined;
  isAccepted: boolean;
  /** The rod as it is predicted; undefined while it is not. */
  model: SheetModel | undefined;
}

/** One test: the weight, how it was held, its pictures. */
export function TestCard({ test, number, before, isAccepted, model }: TestCardProps) {
  const { write } = useBuild();
  const name = `Test ${number}`;
  const field = (of: string) => ['loadTests', test.id, of] as const;
  return (
    <section className="test-card" aria-label={name}>
      <h3>
        {name} <span className="quiet">{test.madeAt.slice(0, 10)}</span>
        {isAccepted && <span className="quiet"> · the accepted one</span>}
      </h3>
      <div className="fields-row">
        <QuantityField label="Weight that hung" path={field('hung')} gesture="weight of a load test" />
        <QuantityField
          label="Butt above level"
          path={field('buttAngle')}
          gesture="angle of a load test"
          placeholder="from the curve"
        />
        <ChoiceField
          label="The rod was"
          path={field('rod')}
          options={[
            { value: 'taped', name: 'Taped up, with guides' },
            { value: 'bare', name: 'The bare blank' },
          ]}
          unset="taped"
        />
      </div>
      {test.rod === 'bare' && (
        <div className="fields-row">
          <QuantityField
            label="Held, from the tip"
            path={field('heldFromTip')}
            gesture="hold of a load test"
            placeholder="where the curve begins"
            hint="where the blank leaves the clamp"
          />
          <FlagField path={field('leftOut')} gesture="leave a load test out">
            Leave this curve out of the stiffness
          </FlagField>
        </div>
      )}
      {test.photos.map((photo) => (
        <PhotoPanel key={photo.id} test={test} photo={photo} />
      ))}
      <TestResult test={test} before={before} model={model} />
      <AddPhoto test={test.id} first={test.photos.length === 0} />
      <TextField label="Note" path={field('note')} lines={2} />
      <div className="print-line screen-only">
        <Button
          className="button"
          onPress={() => write('put a load test away', rowChanges('loadTests', test.id, { gone: true }))}
        >
          Put this test away
        </Button>
      </div>
    </section>
  );
}

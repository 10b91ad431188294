import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import { spiralInPhotoWords } from '../../../words/judging.ts';
import { Field } from '../../fields/field.tsx';
import { AddPhoto } from '../../parts/photo/add-photo.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { PhotoPanel } from './photo-panel.tsx';
import { TestResult } from './test-result.tsx';

interface TestCardProps {
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
  const { write, id: build } = useBuild();
  const name = `Test ${number}`;
  const field = (of: string) => ['loadTests', test.id, of] as const;
  return (
    <section className="test-card" aria-label={name}>
      <h3>
        {name} <span className="quiet">{test.madeAt.slice(0, 10)}</span>
        {isAccepted && <span className="quiet"> · the accepted one</span>}
      </h3>
      <div className="fields-row">
        <Field path={field('hung')} />
        <Field path={field('buttAngle')} />
        <Field
          path={field('rod')}
          options={[
            { value: 'taped', name: 'Taped up, with guides' },
            { value: 'bare', name: 'The bare blank' },
          ]}
        />
      </div>
      {test.rod === 'taped' && model?.choices.spiral && (
        <p className="small attention">{spiralInPhotoWords}</p>
      )}
      {test.rod === 'bare' && (
        <div className="fields-row">
          <Field path={field('heldFromTip')} />
          <Field path={field('leftOut')} />
        </div>
      )}
      {test.photos.map((photo) => (
        <PhotoPanel key={photo.id} test={test} photo={photo} />
      ))}
      <TestResult test={test} before={before} model={model} />
      <p className="screen-only">
        <Link href={`/live/${build}/${test.id}`}>Watch it live</Link>{' '}
        <span className="quiet small">with a camera on a stand, before the wall’s marks</span>
      </p>
      <AddPhoto test={test.id} first={test.photos.length === 0} />
      <Field path={field('note')} />
      <div className="print-line screen-only">
        <Button
          className="button"
          onPress={() => write('removeTest', rowChanges('loadTests', test.id, { gone: true }))}
        >
          Put this test away
        </Button>
      </div>
    </section>
  );
}

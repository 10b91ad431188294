import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { JointKind } from '../../../engine/bench/bench.ts';
import { jointKinds } from '../../../record/fields/blank.ts';
import { FewChoices } from '../../fields/few-choices.tsx';
import { leadOn } from '../../fields/lead-on.ts';
import { useBuild } from '../../read/build-context.ts';
import { newSections } from './new-sections.ts';

const counts = [1, 2, 3, 4, 5, 6, 7];

/** The first question of an empty bench: how the sections join, and how many; the count lays them out. */
export function StartBlank() {
  const { write, newRowId } = useBuild();
  const [joint, setJoint] = useState<JointKind>('sleeve');
  const layOut = (count: number) => {
    write('layOutSections', newSections(count, joint, newRowId));
    leadOn(undefined);
  };
  return (
    <div className="start-blank">
      <FewChoices
        className="field choice choice-stacked"
        label="How its sections join; one joint may differ, say so later"
        options={jointKinds}
        value={joint}
        choose={setJoint}
      />
      <fieldset className="section-counts">
        <legend className="field-label">How many sections?</legend>
        {counts.map((count) => (
          <Button
            key={count}
            className="button"
            aria-label={count === 1 ? 'Lay out 1 section' : `Lay out ${count} sections`}
            onPress={() => layOut(count)}
          >
            {count}
          </Button>
        ))}
      </fieldset>
    </div>
  );
}

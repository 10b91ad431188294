import { useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import type { JointKind } from '../../../engine/bench/bench.ts';
import { jointKinds } from '../../../record/fields/blank.ts';
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
      <RadioGroup
        className="field choice choice-stacked"
        value={joint}
        onChange={(value) => setJoint(value as JointKind)}
      >
        <Label className="field-label">How its sections join; one joint may differ, say so later</Label>
        <div className="choice-options">
          {Object.entries(jointKinds).map(([value, name]) => (
            <Radio key={value} value={value} className="choice-option">
              {name}
            </Radio>
          ))}
        </div>
      </RadioGroup>
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

import { useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import { useBuild } from '../../read/build-context.ts';
import { type JointKind, jointNames, newSections } from './new-sections.ts';

/** The first question of an empty bench: how many sections, and how they join. */
export function StartBlank() {
  const { write, newRowId } = useBuild();
  const [count, setCount] = useState('4');
  const [joint, setJoint] = useState<JointKind>('sleeve');
  return (
    <div className="start-blank">
      <RadioGroup className="field choice" value={count} onChange={setCount}>
        <Label className="field-label">Sections of the blank</Label>
        <div className="choice-options">
          {['1', '2', '3', '4', '5', '6', '7'].map((value) => (
            <Radio key={value} value={value} className="choice-option">
              {value}
            </Radio>
          ))}
        </div>
      </RadioGroup>
      {count !== '1' && (
        <RadioGroup
          className="field choice choice-stacked"
          value={joint}
          onChange={(value) => setJoint(value as JointKind)}
        >
          <Label className="field-label">
            How they join; one joint may differ, say so later at its section
          </Label>
          <div className="choice-options">
            {Object.entries(jointNames).map(([value, name]) => (
              <Radio key={value} value={value} className="choice-option">
                {name}
              </Radio>
            ))}
          </div>
        </RadioGroup>
      )}
      <Button
        className="button button-main"
        onPress={() => write('layOutSections', newSections(Number(count), joint, newRowId))}
      >
        Lay out {count === '1' ? 'the section' : `${count} sections`}
      </Button>
    </div>
  );
}

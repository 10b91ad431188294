import { useId } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import { paperNames } from '../../../record/fields/delivered.ts';
import { unitNames } from '../../../record/fields/layout.ts';
import { currencyCodes } from '../../read/currency.ts';
import type { FirstStart } from './use-first-start.ts';

/** Asked once, before anything of the builder's own: what a bare number means, the paper, the money. */
export function FirstStartCard({ chosen, choose, keep }: FirstStart) {
  const id = useId();
  return (
    <section className="first-start screen-only" aria-label="How this shop measures">
      <FewChoices
        label="You measure in"
        names={unitNames}
        value={chosen.unitSystem}
        choose={(unitSystem) => choose({ unitSystem })}
      />
      <FewChoices
        label="You print on"
        names={paperNames}
        value={chosen.paper}
        choose={(paper) => choose({ paper })}
      />
      <div className="field">
        <label className="field-label" htmlFor={id}>
          You charge in
        </label>
        <select
          id={id}
          className="field-input"
          value={chosen.currency}
          onChange={(event) => choose({ currency: event.target.value })}
        >
          {currencyCodes().map((code) => (
            <option key={code}>{code}</option>
          ))}
        </select>
      </div>
      <Button className="button" onPress={keep}>
        Keep these
      </Button>
    </section>
  );
}

interface FewChoicesProps<Choice extends string> {
  label: string;
  names: Readonly<Record<Choice, string>>;
  value: Choice;
  choose(value: Choice): void;
}

function FewChoices<Choice extends string>({ label, names, value, choose }: FewChoicesProps<Choice>) {
  return (
    <RadioGroup className="field choice" value={value} onChange={(picked) => choose(picked as Choice)}>
      <Label className="field-label">{label}</Label>
      <div className="choice-options">
        {Object.entries<string>(names).map(([option, name]) => (
          <Radio key={option} value={option} className="choice-option">
            {name}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}

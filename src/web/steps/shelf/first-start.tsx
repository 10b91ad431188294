import { useId } from 'react';
import { Button } from 'react-aria-components';
import { paperNames } from '../../../record/fields/delivered.ts';
import { unitNames } from '../../../record/fields/layout.ts';
import { FewChoices } from '../../fields/few-choices.tsx';
import { currencyCodes } from '../../read/currency.ts';
import type { FirstStart } from './use-first-start.ts';

/** Asked once, before anything of the builder's own: what a bare number means, the paper, the money. */
export function FirstStartCard({ chosen, choose, keep }: FirstStart) {
  const id = useId();
  return (
    <section className="first-start screen-only" aria-label="How this shop measures">
      <FewChoices
        label="You measure in"
        options={unitNames}
        value={chosen.unitSystem}
        choose={(unitSystem) => choose({ unitSystem })}
      />
      <FewChoices
        label="You print on"
        options={paperNames}
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

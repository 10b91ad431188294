import { MoneyField } from '../../fields/money-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { PickField } from '../../fields/pick-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { currencyCodes, useCurrency } from '../../read/use-currency.ts';

/** How the shop reckons, and what stands at the head of its papers. */
export function RatesPart() {
  const { code } = useCurrency();
  return (
    <Part folded title="Rates and papers" aside="for quotes, labels and repairs; a build may say otherwise">
      <div className="fields-row">
        <TextField label="Name on papers" path={['rates', '-', 'shopName']} />
        <PickField
          label="Currency"
          path={['rates', '-', 'currency']}
          unset={code}
          options={currencyCodes().map((value) => ({ value, name: value }))}
        />
        <MoneyField label="An hour of work" path={['rates', '-', 'hourlyRate']} />
        <NumberField label="Overheads on work" unit="%" path={['rates', '-', 'overheadPercent']} />
        <NumberField label="Reserve" unit="%" path={['rates', '-', 'reservePercent']} placeholder="5" />
        <NumberField label="Tax" unit="%" path={['rates', '-', 'taxPercent']} placeholder="0" />
        <NumberField label="Deposit" unit="%" path={['rates', '-', 'depositPercent']} placeholder="40" />
        <NumberField
          label="A quote is valid for"
          unit="days"
          path={['rates', '-', 'validDays']}
          placeholder="30"
        />
        <NumberField label="Delivery in" unit="weeks" path={['rates', '-', 'leadWeeks']} placeholder="8" />
      </div>
      <TextField label="Address on papers" path={['rates', '-', 'shopAddress']} lines={3} />
      <TextField label="Terms on quotes" path={['rates', '-', 'terms']} lines={3} />
      <p className="small quiet">
        Changing the currency converts nothing: 12.50 of the old one stands as 12.50 of the new one, or as
        1250 where it has no cents. Overheads, reserve and deposit are your own figures; the pale ones are
        common practice, no source.
      </p>
    </Part>
  );
}

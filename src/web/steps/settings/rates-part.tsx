import { quoteRates } from '../../../record/fields/delivered.ts';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { currencyCodes } from '../../read/currency.ts';
import { useCurrency } from '../../read/shop.tsx';

/** How the shop reckons, and what stands at the head of its papers. */
export function RatesPart() {
  const { code } = useCurrency();
  return (
    <Part folded title="Rates and papers" aside="for quotes, labels and repairs; a build may say otherwise">
      <div className="fields-row">
        <Field path={['rates', '-', 'shopName']} />
        <Field
          path={['rates', '-', 'currency']}
          usual={code}
          options={currencyCodes().map((value) => ({ value, name: value }))}
        />
      </div>
      <FieldsRow of="rates" names={Object.keys(quoteRates)} />
      <Field path={['rates', '-', 'shopAddress']} />
      <Field path={['rates', '-', 'terms']} />
      <p className="small quiet">
        Changing the currency converts no price: 12.50 stays 12.50, or becomes 1250 where the new one has no
        cents. Overheads, reserve and deposit are your own figures; the grey ones are common practice, no
        source.
      </p>
    </Part>
  );
}

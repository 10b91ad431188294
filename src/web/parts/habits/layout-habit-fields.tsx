import { criteria } from '../../../engine/layout/criteria.ts';
import { limitFields } from '../../../record/schema/limit-fields.ts';
import { criterionWords } from '../../../words/criteria.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';

const at = (field: string) => ['layout', '-', field] as const;
const usual = 'usual of the rod';

/** What every layout of the shop is judged by; an empty field leaves what is usual for that rod. */
export function LayoutHabitFields() {
  return (
    <div className="fields-row" data-group="">
      {criteria.map(({ id }) => {
        const { label, unit } = criterionWords[id];
        const field = { label, path: at(limitFields[id].field), placeholder: usual };
        return unit ? <NumberField key={id} {...field} unit={unit} /> : <QuantityField key={id} {...field} />;
      })}
      <QuantityField label="Kept free beside a ferrule" path={at('ferruleClear')} placeholder={usual} />
      <QuantityField label="Butt above the level" path={at('buttAngle')} placeholder={usual} />
      <QuantityField label="Weight that keeps the line taut" path={at('tautLine')} placeholder={usual} />
      <NumberField label="Friction, at least" path={at('frictionLowest')} placeholder={usual} />
      <NumberField label="Friction, at most" path={at('frictionHighest')} placeholder={usual} />
      <QuantityField label="Thickest knot that must pass" path={at('knot')} placeholder="not checked" />
      <ChoiceField
        label="Intervals"
        path={at('intervals')}
        unset="growing"
        options={[
          { value: 'growing', name: 'growing towards the butt' },
          { value: 'free', name: 'free' },
        ]}
      />
    </div>
  );
}

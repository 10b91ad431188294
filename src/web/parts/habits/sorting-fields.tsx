import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';

const at = (field: string) => ['sorting', '-', field] as const;

/** How straight is straight enough, of one build or of the shop; an empty field says what holds and whose word it is. */
export function SortingFields() {
  return (
    <div className="fields-row" data-group="">
      <NumberField label="Tolerance, of the blank’s diameter" path={at('ofDiameterPercent')} unit="%" />
      <NumberField label="Not used past" path={at('mostTolerances')} unit="× tolerance" />
      <QuantityField label="Feet beside each other, slightly out at" path={at('usualOffset')} />
      <QuantityField label="Angle between the feet, slightly out at" path={at('usualAngle')} />
      <QuantityField label="“Straight” by eye is out by" path={at('straightOut')} />
      <QuantityField label="“Slightly out” by eye" path={at('slightOut')} />
      <QuantityField label="“Bent” by eye" path={at('bentOut')} />
    </div>
  );
}

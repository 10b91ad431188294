import { ChoiceField } from '../fields/choice-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';

const at = (field: string) => ['finish', '-', field] as const;

/** The product's data sheet, typed once. */
export function ProductFields() {
  return (
    <div className="fields-row" data-group="">
      <TextField label="Product" path={at('product')} placeholder="as on the bottle" />
      <NumberField label="Data sheet speaks of" path={at('statedAtC')} unit="°C" placeholder="23" />
      <QuantityField label="Pot life" path={at('potLife')} placeholder="20 min" />
      <QuantityField label="Turn for" path={at('turnFor')} placeholder="6 h" />
      <QuantityField label="Recoat after" path={at('recoatFrom')} placeholder="12 h" />
      <QuantityField label="Recoat before" path={at('recoatUntil')} placeholder="48 h" />
      <QuantityField label="Bend after" path={at('flexAfter')} placeholder="24 h" />
      <QuantityField label="Fish after" path={at('fishAfter')} placeholder="5 d" />
    </div>
  );
}

export function MixFields({ byMass }: { byMass: boolean }) {
  return (
    <div className="fields-row" data-group="">
      <ChoiceField
        label="Measure by"
        path={at('mixBy')}
        unset="volume"
        options={[
          { value: 'volume', name: 'volume' },
          { value: 'mass', name: 'mass' },
        ]}
      />
      <NumberField
        label={`Parts of resin, by ${byMass ? 'mass' : 'volume'}`}
        path={at('partA')}
        placeholder="1"
      />
      <NumberField
        label={`Parts of hardener, by ${byMass ? 'mass' : 'volume'}`}
        path={at('partB')}
        placeholder="1"
      />
      {byMass && (
        <>
          <NumberField label="Density of the resin" path={at('densityA')} unit="g/ml" />
          <NumberField label="Density of the hardener" path={at('densityB')} unit="g/ml" />
        </>
      )}
      <NumberField
        label={byMass ? 'Scale’s division' : 'Syringe’s division'}
        path={at('measureStep')}
        unit={byMass ? 'g' : 'ml'}
        placeholder="0.1"
      />
      <QuantityField label="Thickness of a coat" path={at('coatThickness')} placeholder="0.25 mm" />
      <NumberField label="Brushing one wrap takes" path={at('minutesPerWrap')} unit="min" placeholder="0.5" />
      <NumberField label="Room" path={at('roomC')} unit="°C" placeholder="23" />
    </div>
  );
}

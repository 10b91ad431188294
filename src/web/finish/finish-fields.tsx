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
      <NumberField label="Data sheet speaks of" path={at('statedAtC')} unit="°C" common="23" />
      <QuantityField label="Pot life" path={at('potLife')} common="20 min" />
      <QuantityField label="Turn for" path={at('turnFor')} common="6 h" />
      <QuantityField label="Recoat after" path={at('recoatFrom')} common="12 h" />
      <QuantityField label="Recoat before" path={at('recoatUntil')} common="48 h" />
      <QuantityField label="Bend after" path={at('flexAfter')} common="24 h" />
      <QuantityField label="Fish after" path={at('fishAfter')} common="5 d" />
    </div>
  );
}

export function MixFields({ byMass }: { byMass: boolean }) {
  return (
    <div className="fields-row" data-group="">
      <NumberField label="Room" path={at('roomC')} unit="°C" common="23" />
      <ChoiceField
        label="Measure by"
        path={at('mixBy')}
        unset="volume"
        options={[
          { value: 'volume', name: 'volume' },
          { value: 'mass', name: 'mass' },
        ]}
      />
      <NumberField label={`Parts of resin, by ${byMass ? 'mass' : 'volume'}`} path={at('partA')} common="1" />
      <NumberField
        label={`Parts of hardener, by ${byMass ? 'mass' : 'volume'}`}
        path={at('partB')}
        common="1"
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
        common="0.1"
      />
      <QuantityField label="Thickness of a coat" path={at('coatThickness')} common="0.25 mm" />
      <NumberField label="Brushing one wrap takes" path={at('minutesPerWrap')} unit="min" common="0.5" />
      <NumberField
        label="One division may put the ratio off by"
        path={at('ratioErrorPercent')}
        unit="%"
        common="4"
      />
      <NumberField
        label="Of the pot life, brushing may take"
        path={at('brushedPercent')}
        unit="%"
        common="67"
      />
      <NumberField label="Mix, of what the rod takes" path={at('mixTimes')} unit="×" common="1.5" />
    </div>
  );
}

import { ChoiceField } from '../../fields/choice-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';

const at = (field: string) => ['finish', '-', field] as const;

/** The product's data sheet, typed once. */
export function ProductFields() {
  return (
    <div className="fields-row" data-group="">
      <TextField label="Product" path={at('product')} placeholder="as on the bottle" />
      <NumberField label="Data sheet speaks of" path={at('statedAtC')} unit="°C" />
      <QuantityField label="Pot life" path={at('potLife')} />
      <QuantityField label="Turn for" path={at('turnFor')} />
      <QuantityField label="Recoat after" path={at('recoatFrom')} />
      <QuantityField label="Recoat before" path={at('recoatUntil')} />
      <QuantityField label="Bend after" path={at('flexAfter')} />
      <QuantityField label="Fish after" path={at('fishAfter')} />
      <NumberField label="Times halve for every" path={at('halvesPerC')} unit="°C" />
    </div>
  );
}

/** How one build is mixed, in the room it stands in. */
export function MixFields({ byMass }: { byMass: boolean }) {
  return (
    <>
      <div className="fields-row">
        <NumberField label="Room" path={at('roomC')} unit="°C" />
      </div>
      <MixHabitFields byMass={byMass} />
    </>
  );
}

/** How this shop mixes; an empty field says what holds and where that comes from. */
export function MixHabitFields({ byMass }: { byMass: boolean }) {
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
      <NumberField label={`Parts of resin, by ${byMass ? 'mass' : 'volume'}`} path={at('partA')} />
      <NumberField label={`Parts of hardener, by ${byMass ? 'mass' : 'volume'}`} path={at('partB')} />
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
      />
      <NumberField label="Coats on the finished rod" path={at('coatsPlanned')} />
      <QuantityField label="Thickness of a coat" path={at('coatThickness')} />
      <QuantityField label="Height of a foot, filled beside" path={at('footHeight')} />
      <NumberField label="Brushing one wrap takes" path={at('minutesPerWrap')} unit="min" />
      <NumberField label="One division may put the ratio off by" path={at('ratioErrorPercent')} unit="%" />
      <NumberField label="Of the pot life, brushing may take" path={at('brushedPercent')} unit="%" />
      <NumberField label="Mix, of what the rod takes" path={at('mixTimes')} unit="×" />
    </div>
  );
}

import { ChoiceField } from '../fields/choice-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';

const at = (field: string) => ['handle', '-', field] as const;

/** Grip, seat, butt and keeper as bought; each typed once. */
export function HandlePartFields() {
  return (
    <div className="fields-row" data-group="">
      <TextField label="Grip’s shape" path={at('gripShape')} placeholder="cigar, half-wells …" />
      <QuantityField label="Grip’s length" path={at('gripLength')} placeholder="6 1/2 in" />
      <QuantityField label="Grip’s bore" path={at('gripBore')} placeholder="1/4 in" />
      <QuantityField label="Grip’s mass" path={at('gripMass')} />
      <QuantityField label="Seat’s length" path={at('seatLength')} placeholder="3 1/2 in" />
      <QuantityField label="Seat’s bore" path={at('seatBore')} placeholder="3/8 in" />
      <QuantityField label="Seat’s mass" path={at('seatMass')} />
      <ChoiceField
        label="Seat locks"
        path={at('seatLock')}
        unset="up"
        options={[
          { value: 'up', name: 'up' },
          { value: 'down', name: 'down' },
        ]}
      />
      <NumberField label="Bands of arbor under the seat" path={at('arborCount')} placeholder="3" />
      <QuantityField
        label="Fighting butt, behind the blank’s end"
        path={at('fightingButt')}
        placeholder="none"
      />
      <QuantityField label="Keeper ahead of the grip" path={at('keeperAhead')} placeholder="3/4 in" />
      <QuantityField
        label="Reach: butt end to the stripping guide"
        path={at('reach')}
        placeholder="30 in"
        hint="Two inches less than the line hand reaches in comfort (common practice)."
      />
    </div>
  );
}

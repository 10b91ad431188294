import { ChoiceField } from '../../fields/choice-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';

const at = (field: string) => ['handle', '-', field] as const;

/** Grip, seat, butt and keeper as bought; each typed once. */
export function HandlePartFields() {
  return (
    <div className="fields-row" data-group="">
      <TextField label="Grip’s shape" path={at('gripShape')} placeholder="such as half-wells" />
      <QuantityField label="Grip’s length" path={at('gripLength')} placeholder="such as 6 1/2 in" />
      <QuantityField label="Grip’s bore" path={at('gripBore')} placeholder="such as 1/4 in" />
      <QuantityField label="Grip’s mass" path={at('gripMass')} />
      <QuantityField label="Seat’s length" path={at('seatLength')} placeholder="such as 3 1/2 in" />
      <QuantityField label="Seat’s bore" path={at('seatBore')} placeholder="such as 3/8 in" />
      <QuantityField label="Seat’s mass" path={at('seatMass')} />
      <QuantityField
        label="Fighting butt, behind the blank’s end"
        path={at('fightingButt')}
        placeholder="none"
      />
      <QuantityField
        label="Keeper ahead of the grip"
        path={at('keeperAhead')}
        placeholder="such as 3/4 in"
        hint="10 to 40 mm ahead of the check, clear of the thumb (common practice)."
      />
      <QuantityField label="Keeper’s mass" path={at('keeperMass')} />
      <QuantityField
        label="Reach: butt end to the stripping guide"
        path={at('reach')}
        placeholder="such as 30 in"
        hint="Two inches less than the line hand reaches in comfort (common practice)."
      />
    </div>
  );
}

/** How this shop fits and glues; an empty field says what holds and where that comes from. */
export function HandleHabitFields() {
  return (
    <div className="fields-row" data-group="">
      <NumberField label="Bands of arbor under the seat" path={at('arborCount')} />
      <QuantityField label="Width of a band" path={at('arborWidth')} />
      <QuantityField label="Glue between blank and grip, all round" path={at('glueLine')} />
      <QuantityField label="The reamer stops short of the end by" path={at('reamShort')} />
      <QuantityField label="Glue may be bent after" path={at('glueCure')} />
      <QuantityField label="Arbors stop short of the seat’s ends by" path={at('arborShort')} />
      <QuantityField label="Widest gap, all round, that tape may fill" path={at('tapedGap')} />
      <QuantityField label="Winding check wider than the blank by, at least" path={at('checkLeast')} />
      <QuantityField label="Check wider by, at most" path={at('checkMost')} />
      <QuantityField label="Tip-top’s tube wider than the tip by, at least" path={at('tubeLeast')} />
      <QuantityField label="Tube wider by, at most" path={at('tubeMost')} />
      <ChoiceField
        label="Seat locks"
        path={at('seatLock')}
        unset="up"
        options={[
          { value: 'up', name: 'up' },
          { value: 'down', name: 'down' },
        ]}
      />
      <QuantityField label="Keeper over its feet" path={at('keeperLength')} />
      <NumberField label="Feet of the keeper" path={at('keeperFeet')} />
    </div>
  );
}

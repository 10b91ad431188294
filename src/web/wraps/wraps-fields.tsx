import { wrapDefaults } from '../../engine/wraps/wrap-choices.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FlagField } from '../fields/flag-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { ColourField } from './colour-field.tsx';

const at = (field: string) => ['wraps', '-', field] as const;

/** Thread as it lies on this bench, and how this rod is wrapped; empty fields are common practice. */
export function WrapsFields() {
  return (
    <>
      <div className="fields-row" data-group="">
        <NumberField label="Turns counted" path={at('turnsCounted')} placeholder="165" />
        <QuantityField
          label="Over a width of"
          path={at('turnsOver')}
          placeholder="1 in"
          hint="Lay a close wrap and count it: spools of one size differ."
        />
        <QuantityField label="Start before the foot" path={at('startBeforeFoot')} placeholder="2.5 mm" />
        <NumberField label="Turns over the tag (lock)" path={at('lockTurns')} placeholder="7" />
        <NumberField label="Trim turns at each end" path={at('trimTurns')} placeholder="4" />
        <QuantityField label="Wrap at the winding check" path={at('checkWrap')} placeholder="10 mm" />
        <QuantityField label="Wrap at the tip-top" path={at('tipWrap')} placeholder="6 mm" />
        <ChoiceField
          label="Ferrule wraps"
          path={at('ferruleWraps')}
          unset="yes"
          options={[
            { value: 'yes', name: 'yes' },
            { value: 'no', name: 'no' },
          ]}
        />
        <QuantityField label="Signature from the butt end" path={at('signatureFrom')} />
        <QuantityField label="Signature’s length" path={at('signatureLength')} />
        <QuantityField label="Thread on a spool" path={at('spoolLength')} placeholder="300 ft" />
        <NumberField label="Reserve" path={at('reservePercent')} unit="%" placeholder="20" />
        <ColourField label="Thread" path={at('threadColour')} unset={wrapDefaults.threadColour} />
        <ColourField label="Trim" path={at('trimColour')} unset={wrapDefaults.trimColour} />
      </div>
      <QuantityField
        label="An underwrap shows at either end by"
        path={at('underwrapBeyond')}
        placeholder="8 mm"
      />
      <FlagField path={at('underwrap')} gesture="underwrap">
        Underwrap beneath every foot (heavy rods)
      </FlagField>
    </>
  );
}

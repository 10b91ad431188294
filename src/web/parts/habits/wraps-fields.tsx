import { type ThreadColour, type WrapChoices, wrapDefaults } from '../../../engine/wraps/wrap-choices.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { ColourField } from '../../fields/colour-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';

const at = (field: string) => ['wraps', '-', field] as const;

/** How wraps are laid, of one build or of the shop; an empty field says what holds and where that comes from. */
export function WrapHabitFields() {
  return (
    <>
      <div className="fields-row" data-group="">
        <NumberField label="Turns counted" path={at('turnsCounted')} />
        <QuantityField
          label="Over a width of"
          path={at('turnsOver')}
          hint="Lay a close wrap and count it: spools of one size differ."
        />
        <QuantityField label="Start before the foot" path={at('startBeforeFoot')} />
        <NumberField label="Turns over the tag (lock)" path={at('lockTurns')} />
        <NumberField label="Trim turns at each end" path={at('trimTurns')} />
        <QuantityField label="Wrap at the winding check" path={at('checkWrap')} />
        <QuantityField label="Wrap at the tip-top" path={at('tipWrap')} />
      </div>
      <h3>Over a foot, by section</h3>
      <div className="fields-row" data-group="">
        <QuantityField label="On the tip section" path={at('wrapTip')} />
        <QuantityField label="Between tip and butt" path={at('wrapMiddle')} />
        <QuantityField label="On the butt section" path={at('wrapButt')} />
        <QuantityField label="At the stripping guide" path={at('wrapStripping')} />
      </div>
      <h3>Ferrules and underwraps</h3>
      <div className="fields-row" data-group="">
        <ChoiceField
          label="Ferrule wraps"
          path={at('ferruleWraps')}
          unset="yes"
          options={[
            { value: 'yes', name: 'yes' },
            { value: 'no', name: 'no' },
          ]}
        />
        <NumberField label="Length of a ferrule wrap" path={at('ferruleDiameters')} unit="× diameter" />
        <QuantityField label="It stays off the edge by" path={at('ferruleEdge')} />
        <QuantityField label="An underwrap shows at either end by" path={at('underwrapBeyond')} />
      </div>
      <FlagField path={at('underwrap')} gesture="underwrap">
        Underwrap beneath every foot (heavy rods)
      </FlagField>
      <h3>Spools</h3>
      <div className="fields-row" data-group="">
        <QuantityField label="Thread on a spool" path={at('spoolLength')} />
        <QuantityField label="Cut off and held at each wrap" path={at('tagPerWrap')} />
        <NumberField label="Reserve" path={at('reservePercent')} unit="%" />
      </div>
    </>
  );
}

const parts = [
  { part: 'thread', word: 'Thread', common: wrapDefaults.thread },
  { part: 'trim', word: 'Trim', common: wrapDefaults.trim },
  { part: 'underwrap', word: 'Underwrap', common: wrapDefaults.thread },
] satisfies { part: string; word: string; common: ThreadColour }[];

/** Each thread's colour for the drawing, and its name and lot for the day it has to be matched. */
export function ThreadFields({ choices, lots }: { choices?: WrapChoices; lots: boolean }) {
  return (
    <>
      {parts
        .filter(({ part }) => part !== 'underwrap' || !choices || choices.underwrap)
        .map(({ part, word, common }) => (
          <div key={part} className="fields-row" data-group="">
            <ColourField label={word} path={at(`${part}Colour`)} unset={common.colour} />
            <TextField
              label={`${word}: colour’s name`}
              path={at(`${part}Name`)}
              placeholder="as on the spool"
            />
            {lots && part !== 'underwrap' && <TextField label={`${word}: lot`} path={at(`${part}Lot`)} />}
          </div>
        ))}
    </>
  );
}

/** What only this rod has: its writing, and sections that are wrapped in their own way. */
export function RodWrapFields({ sections }: { sections: readonly { id: string; name: string }[] }) {
  return (
    <div className="fields-row" data-group="">
      {sections.map(({ id, name }) => (
        <QuantityField
          key={id}
          label={`Wraps over feet on ${name}`}
          path={['sections', id, 'wrapLength']}
          placeholder="as above"
        />
      ))}
      <QuantityField label="Signature from the butt end" path={at('signatureFrom')} />
      <QuantityField label="Signature’s length" path={at('signatureLength')} />
      <TextField label="Signature" path={at('signatureText')} placeholder="name, length, line, number" />
    </div>
  );
}

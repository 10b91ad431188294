import { Button } from 'react-aria-components';
import type { TurnedSection } from '../../../engine/rotation/turned-section.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { turnSigmaM } from '../../../record/read-turned.ts';
import { Field } from '../../fields/field.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { flagOf, quantityOf, textOf } from '../../read/values.ts';

/** How the section was held and loaded, and one row per step. */
export function TurningRows({ section, name }: { section: TurnedSection; name: string }) {
  const { rows, write } = useBuild();
  const say = useSay();
  const turns = rows('turnReadings').filter((row) => textOf(row, 'turning') === section.id);
  const path = (field: string) => ['turnings', section.id, field] as const;
  const { held, loadsKg } = section;
  const light = loadsKg[0] > 0 ? formatGrams(loadsKg[0]) : 'nothing';
  const heavy = loadsKg[1] === undefined ? 'the weight' : formatGrams(loadsKg[1]);
  const what = held === 'span' ? 'Sag' : 'Drop';
  const remove = () => {
    write('removeTurning', [{ path: path('gone'), value: true }]);
    say('The turning is removed; undo brings it back.');
  };
  return (
    <div className="turning-rows">
      <Field path={path('held')} />
      <div className="fields-two">
        <Field path={path('loadA')} />
        <Field path={path('loadB')} />
        <Field path={path('sigma')} usual={turnSigmaM[held]} passedOver />
      </div>
      <div className="turn-row turn-heads" aria-hidden="true">
        <span>facing down</span>
        <span>
          {what.toLowerCase()}, {light}
        </span>
        <span>
          {what.toLowerCase()}, {heavy}
        </span>
      </div>
      {turns.map((turn) => {
        const angle = quantityOf(turn.fields.turn)?.text ?? 'no angle';
        const at = (field: string) => ['turnReadings', turn.id, field] as const;
        return (
          <div key={turn.id} className={flagOf(turn, 'setAside') ? 'turn-row reading-aside' : 'turn-row'}>
            <Field label={`Angle of ${name} facing down`} labelHidden path={at('turn')} passedOver />
            <Field label={`${what} of ${name} at ${angle} under ${light}`} labelHidden path={at('dropA')} />
            <Field label={`${what} of ${name} at ${angle} under ${heavy}`} labelHidden path={at('dropB')} />
          </div>
        );
      })}
      <Button className="plain small card-remove screen-only" onPress={remove}>
        Remove this turning
      </Button>
    </div>
  );
}

import { Button } from 'react-aria-components';
import type { Row } from '../../../record/document.ts';
import type { QuantityValue } from '../../../record/schema.ts';
import { showQuantity } from '../../../words/quantity-text.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { flagOf, quantityOf, siOf } from '../../read/values.ts';
import { flagCheckRow } from './plan-rows.ts';
import type { SetupRows } from './reading-rows.ts';

/** Every flag's place measured a second time, from the clamp: an inch there shows in no drop. */
export function FlagChecks({ rows, name }: { rows: SetupRows; name: string }) {
  const { rows: allRows, write, newRowId } = useBuild();
  const flags = flagRowsOf(rows);
  const checks = allRows('flagChecks').filter((row) => row.fields.setup === rows.setup.id);
  const checkOf = (flag: QuantityValue) => checks.find((row) => siOf(row, 'fromTip') === flag.si);
  const missing = flags.filter((flag) => !checkOf(flag));
  if (flags.length === 0) return null;
  const add = () =>
    write(
      'addFlagChecks',
      missing.flatMap((flag, order) => flagCheckRow(rows.setup.id, flag, checks.length + order, newRowId)),
    );
  return (
    <fieldset className="flag-checks">
      <legend className="small">
        Measure each flag again, this time from the clamp. A mistake here does not show in the drops.
      </legend>
      {flags.map((flag) => {
        const check = checkOf(flag);
        return check && <FlagCheck key={check.id} check={check} flag={flag} name={name} />;
      })}
      {missing.length > 0 && (
        <Button className="plain small screen-only" onPress={add}>
          {checks.length === 0 ? 'Measure the flags once more' : 'The other flags too'}
        </Button>
      )}
    </fieldset>
  );
}

function FlagCheck({ check, flag, name }: { check: Row; flag: QuantityValue; name: string }) {
  const { reader } = useShop();
  const place = showQuantity(flag, 'length', reader.units).text;
  return (
    <div className="reading">
      <span className="reading-word" aria-hidden="true">
        <Figure text={place} />
      </span>
      <Field
        label={`Flag at ${place} from the clamp, ${name}`}
        labelHidden
        path={['flagChecks', check.id, 'fromClamp']}
        passedOver
      />
    </div>
  );
}

/** Each station that drops are read at, from the tip down; the tip is none. */
function flagRowsOf({ tests }: SetupRows): QuantityValue[] {
  const stations = new Map<number, QuantityValue>();
  for (const { readings } of tests) {
    for (const row of readings) {
      const station = quantityOf(row.fields.fromTip);
      if (station && station.si > 0 && !flagOf(row, 'atClamp')) stations.set(station.si, station);
    }
  }
  return [...stations.values()].sort((a, b) => a.si - b.si);
}

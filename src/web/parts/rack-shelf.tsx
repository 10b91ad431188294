import { Button } from 'react-aria-components';
import { guideKindOptions } from '../../engine/kinds/guides.ts';
import { formatGrams, formatMm } from '../../engine/units/format-quantity.ts';
import type { Row } from '../../record/document.ts';
import { rackName, typicalOfRack } from '../../record/rack.ts';
import { NumberField } from '../fields/number-field.tsx';
import { PickField } from '../fields/pick-field.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { ShopFields } from '../fields/shop-fields.tsx';
import { TextField } from '../fields/text-field.tsx';
import { useShop } from '../read/shop.tsx';
import { numberOf, textOf } from '../read/values.ts';
import { Part } from './sheet/part.tsx';
import '../style/guides.css';

const kinds = guideKindOptions('rack');

/** The shop's own guides, each kind and size measured once for all builds. */
export function RackShelf({ usedHere }: { usedHere?: ReadonlyMap<string, number> }) {
  const { rack, write, newRowId } = useShop();
  const add = () => {
    const id = newRowId();
    write('add to the rack', [
      { path: ['rack', id, 'order'], value: rack.length },
      { path: ['rack', id, 'kind'], value: textOf(rack.at(-1) ?? { id, fields: {} }, 'kind') ?? 'snake' },
    ]);
  };
  return (
    <Part
      title="The shop’s guides"
      aside="measured once, used in every build; sizes differ between makers"
      tools={
        <Button className="button" onPress={add}>
          Add a guide to the shop
        </Button>
      }
    >
      <ShopFields>
        {rack.length === 0 && (
          <p>
            None yet. Measure one of each size: wire, height, feet, opening, mass. What stays empty is taken
            as typical of the size and says so.
          </p>
        )}
        {rack.map((row) => (
          <RackRow key={row.id} row={row} used={usedHere?.get(row.id) ?? 0} />
        ))}
      </ShopFields>
    </Part>
  );
}

function RackRow({ row, used }: { row: Row; used: number }) {
  const { write } = useShop();
  const at = (field: string) => ['rack', row.id, field] as const;
  const typical = typicalOfRack(row);
  const pale = (value: number | undefined, show: (si: number) => string) =>
    value === undefined ? 'not known' : `${show(value)} typical`;
  const remove = () => write('take out of the rack', [{ path: at('gone'), value: true }]);
  return (
    <details className="rack-row">
      <summary>
        {rackName(row)} <span className="quiet">{rackWords(row, used)}</span>
      </summary>
      <div className="fields-row" data-group="">
        <PickField label="Kind" path={at('kind')} options={kinds} unset="snake" />
        <TextField label="Size" path={at('size')} placeholder="1/0, 12 mm" />
        <TextField label="Name in the drawer" path={at('name')} placeholder="your own word for it" />
        <PickField
          label="Its numbers are"
          path={at('numbersAre')}
          unset="measured"
          options={[
            { value: 'measured', name: 'measured here' },
            { value: 'stated', name: 'from the packet' },
          ]}
        />
        <QuantityField label="Wire" path={at('wire')} placeholder="not known" />
        <QuantityField
          label="Height of the ring’s middle"
          path={at('ringHeight')}
          placeholder={pale(typical.ringHeightM, formatMm)}
          hint="Height over all, less the wire and half the opening."
        />
        <QuantityField
          label="Length over all feet"
          path={at('foot')}
          placeholder={pale(typical.lengthM, formatMm)}
        />
        <QuantityField label="Length of one foot" path={at('oneFoot')} placeholder="not known" />
        <QuantityField label="Width of a foot" path={at('footWidth')} placeholder="not known" />
        <NumberField label="Feet" path={at('feet')} placeholder="1 or 2" />
        <QuantityField
          label="Clear opening"
          path={at('opening')}
          placeholder={pale(typical.insideM, formatMm)}
        />
        <QuantityField
          label="Mass of one"
          path={at('mass')}
          placeholder={pale(typical.massKg, (kg) => formatGrams(kg, 2))}
          hint="Weigh ten together and divide."
        />
        <NumberField label="On hand" path={at('onHand')} placeholder="not counted" />
      </div>
      <Button className="plain" onPress={remove}>
        Take out of the shop
      </Button>
    </details>
  );
}

function rackWords(row: Row, used: number): string {
  const onHand = numberOf(row, 'onHand');
  const words = [
    onHand === undefined ? 'not counted' : `${onHand} on hand`,
    used > 0 ? `${used} on this build` : '',
    textOf(row, 'numbersAre') === 'stated' ? 'numbers from the packet' : '',
  ];
  return words.filter((word) => word !== '').join(' · ');
}

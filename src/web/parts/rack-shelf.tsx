import { Button } from 'react-aria-components';
import type { Row } from '../../record/document.ts';
import { rowChanges } from '../../record/operation.ts';
import { rackName, typicalOfRack } from '../../record/rack.ts';
import { Field } from '../fields/field.tsx';
import { ShopFields } from '../fields/shop-fields.tsx';
import { useShop } from '../read/shop.tsx';
import { numberOf, textOf } from '../read/values.ts';
import { Part } from './sheet/part.tsx';
import '../style/guides.css';

/** The shop's own guides, each kind and size measured once for all builds. */
export function RackShelf({ usedHere }: { usedHere?: ReadonlyMap<string, number> }) {
  const { rack, write, newRowId } = useShop();
  const add = () => {
    const id = newRowId();
    write(
      'addToRack',
      rowChanges('rack', id, {
        order: rack.length,
        kind: textOf(rack.at(-1) ?? { id, fields: {} }, 'kind') ?? 'snake',
      }),
    );
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
  const remove = () => write('removeFromRack', [{ path: at('gone'), value: true }]);
  return (
    <details className="rack-row">
      <summary>
        {rackName(row)} <span className="quiet">{rackWords(row, used)}</span>
      </summary>
      <div className="fields-row" data-group="">
        <Field path={at('kind')} />
        <Field path={at('size')} />
        <Field path={at('name')} />
        <Field path={at('numbersAre')} />
        <Field path={at('wire')} />
        <Field path={at('ringHeight')} usual={typical.ringHeightM} />
        <Field path={at('foot')} usual={typical.lengthM} />
        <Field path={at('oneFoot')} />
        <Field path={at('footWidth')} />
        <Field path={at('feet')} />
        <Field path={at('opening')} usual={typical.insideM} />
        <Field path={at('mass')} usual={typical.massKg} />
        <Field path={at('onHand')} />
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

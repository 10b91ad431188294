import { Button } from 'react-aria-components';
import { rowChanges } from '../../../record/operation.ts';
import { nameOfRow } from '../../../record/row-names.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useShop } from '../../read/shop.tsx';

/** What each printer makes of the printed rules; the next strips are corrected by it. */
export function PrintersPart() {
  const { printers, paper, write, newRowId } = useShop();
  const add = () => {
    const id = newRowId();
    write('addPrinter', rowChanges('printers', id, { order: printers.length, paper }));
  };
  return (
    <Part
      folded
      title="Printers"
      aside="what the 100 mm rules on the last print measured"
      tools={
        <Button className="button" onPress={add}>
          Add a printer
        </Button>
      }
    >
      {printers.length === 0 && (
        <p>
          None yet. Print strips at “actual size” and measure their rules; most printers need no correction.
        </p>
      )}
      {printers.map(({ id, fields }) => (
        <fieldset key={id} className="fields-row">
          <legend className="visually-hidden">A printer</legend>
          <Field path={['printers', id, 'name']} pale={nameOfRow('printers', { fields })} />
          <Field path={['printers', id, 'paper']} />
          <Field path={['printers', id, 'ruleAcross']} />
          <Field path={['printers', id, 'ruleAlong']} />
          <Button
            className="plain"
            onPress={() => write('removePrinter', [{ path: ['printers', id, 'gone'], value: true }])}
          >
            Remove
          </Button>
        </fieldset>
      ))}
    </Part>
  );
}

import { Button } from 'react-aria-components';
import { PickField } from '../../fields/pick-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useShop } from '../../read/shop.tsx';

/** What each printer makes of the printed rules; the next strips are corrected by it. */
export function PrintersPart() {
  const { printers, paper, write, newRowId } = useShop();
  const add = () => {
    const id = newRowId();
    write('add a printer', [
      { path: ['printers', id, 'name'], value: `Printer ${printers.length + 1}` },
      { path: ['printers', id, 'paper'], value: paper },
    ]);
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
      {printers.map(({ id }) => (
        <fieldset key={id} className="fields-row">
          <legend className="visually-hidden">A printer</legend>
          <TextField label="Printer" path={['printers', id, 'name']} />
          <PickField
            label="Paper"
            path={['printers', id, 'paper']}
            unset="a4"
            options={[
              { value: 'a4', name: 'A4' },
              { value: 'letter', name: 'Letter' },
            ]}
          />
          <QuantityField
            label="100 mm across measured"
            path={['printers', id, 'ruleAcross']}
            placeholder="100 mm"
          />
          <QuantityField
            label="100 mm along measured"
            path={['printers', id, 'ruleAlong']}
            placeholder="100 mm"
          />
          <Button
            className="plain"
            onPress={() => write('remove a printer', [{ path: ['printers', id, 'gone'], value: true }])}
          >
            Remove
          </Button>
        </fieldset>
      ))}
    </Part>
  );
}

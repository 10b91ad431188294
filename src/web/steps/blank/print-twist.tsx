import { Button } from 'react-aria-components';
import { twistSheet } from '../../../sheets/twist-sheet.ts';
import { usePrint } from '../../parts/sheet/use-print.ts';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { siOf } from '../../read/values.ts';

/** The bar's steps and its readings as a sheet of paper with boxes to fill in. */
export function PrintTwist() {
  const { single, rows } = useBuild();
  const { paper, writer } = useShop();
  const { print, printing } = usePrint();
  const place = single('twistTest');
  const twist = {
    barFromTipM: siOf(place, 'barFromTip'),
    clampFromTipM: siOf(place, 'clampFromTip'),
    weights: rows('twists').map((row) => ({ massKg: siOf(row, 'hung'), armM: siOf(row, 'arm') })),
  };
  const draw = (stamp: string) => [twistSheet(twist, { paper, stamp, writer })];
  return (
    <Button className="button" isDisabled={printing} onPress={() => print({ sheet: 'twist', paper, draw })}>
      Print the sheet for the bar
    </Button>
  );
}

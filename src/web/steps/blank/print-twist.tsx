import { twistSheet } from '../../../sheets/twist-sheet.ts';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { siOf } from '../../read/values.ts';

/** The bar's steps and its readings as a sheet of paper with boxes to fill in. */
export function PrintTwist() {
  const { single, rows } = useBuild();
  const { writer } = useShop();
  const place = single('twistTest');
  const twist = {
    barFromTipM: siOf(place, 'barFromTip'),
    clampFromTipM: siOf(place, 'clampFromTip'),
    weights: rows('twists').map((row) => ({ massKg: siOf(row, 'hung'), armM: siOf(row, 'arm') })),
  };
  return (
    <PrintButton sheet="twist" draw={(on) => [twistSheet(twist, { ...on, writer })]}>
      Print the sheet for the bar
    </PrintButton>
  );
}

import { Button } from 'react-aria-components';
import { wallMarksSheet } from '../../../sheets/wall-marks-sheet.ts';
import { useShop } from '../../read/shop.tsx';
import { usePrint } from '../sheet/use-print.ts';

/** The button that prints the reference marks, eight on four pages, on the shop's paper. */
export function WallMarksPrint() {
  const { paper } = useShop();
  const { print, printing } = usePrint();
  return (
    <Button
      className="button"
      isDisabled={printing}
      onPress={() =>
        print({ sheet: 'wall-marks', paper, draw: (stamp) => [wallMarksSheet({ paper, stamp })] })
      }
    >
      Reference marks as PDF
    </Button>
  );
}

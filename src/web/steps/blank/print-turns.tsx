import { Button } from 'react-aria-components';
import type { Sheet } from '../../../sheets/drawing.ts';
import { usePrint } from '../../parts/sheet/use-print.ts';
import { type Paper, useShop } from '../../read/shop.tsx';

/** The turning's rows as a sheet of paper with boxes to fill in. */
export function PrintTurns({ draw }: { draw(paper: Paper, stamp: string): Sheet }) {
  const { paper } = useShop();
  const { print, printing } = usePrint();
  return (
    <Button
      className="button"
      isDisabled={printing}
      onPress={() => print({ sheet: 'turns', paper, draw: (stamp) => [draw(paper, stamp)] })}
    >
      Print the sheet of turns
    </Button>
  );
}

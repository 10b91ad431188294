import { Button } from 'react-aria-components';
import { protocolSheet } from '../../../sheets/protocol-sheet.ts';
import { usePrint } from '../../parts/sheet/use-print.ts';
import { useBench } from '../../read/bench.tsx';
import { useShop } from '../../read/shop.tsx';
import { usePlanContext } from './plan-context.ts';
import { protocolOfRows } from './protocol-of-rows.ts';
import type { SetupRows } from './reading-rows.ts';
import { sparedLine } from './spared-words.ts';

/** The rows as a sheet of paper for the bench, with boxes to fill in. */
export function ProtocolPrint({ setups }: { setups: readonly SetupRows[] }) {
  const { paper, tapeStep } = useShop();
  const plan = usePlanContext();
  const { series } = useBench();
  const { print, printing } = usePrint();
  if (!plan) return null;
  const draw = (stamp: string) => [
    protocolSheet(protocolOfRows(setups, plan.tables, plan.thirdLoadKg), {
      paper,
      stamp,
      tapeStep,
      shorter: sparedLine(series, setups),
    }),
  ];
  return (
    <Button
      className="button"
      isDisabled={printing}
      onPress={() => print({ sheet: 'protocol', paper, draw })}
    >
      Print the sheet for the bench
    </Button>
  );
}

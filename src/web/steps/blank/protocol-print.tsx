import { protocolSheet } from '../../../sheets/protocol-sheet.ts';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBench } from '../../read/bench.tsx';
import { useShop } from '../../read/shop.tsx';
import { usePlanContext } from './plan-context.ts';
import { protocolOfRows } from './protocol-of-rows.ts';
import type { SetupRows } from './reading-rows.ts';
import { sparedLine } from './spared-words.ts';

/** The rows as a sheet of paper for the bench, with boxes to fill in. */
export function ProtocolPrint({ setups }: { setups: readonly SetupRows[] }) {
  const { tapeStep } = useShop();
  const plan = usePlanContext();
  const { series } = useBench();
  if (!plan) return null;
  const protocol = protocolOfRows(setups, plan.tables, plan.thirdLoadKg);
  const shorter = sparedLine(series, setups);
  return (
    <PrintButton sheet="protocol" draw={(on) => [protocolSheet(protocol, { ...on, tapeStep, shorter })]}>
      Print the sheet for the bench
    </PrintButton>
  );
}

import type { StiffnessBandRow } from '../../../engine/stiffness/request.ts';
import { shownRows, threeDigits } from '../../../words/stiffness.ts';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** The chart in figures. */
export function StiffnessTable({ stiffness }: { stiffness: readonly StiffnessBandRow[] }) {
  const { writer } = useShop();
  return (
    <details className="figures-twin">
      <summary>The chart in figures</summary>
      <Table
        label="Stiffness in figures"
        spoken="Stiffness EI along the blank"
        heads={['From tip', 'EI in N·m²', '95 % band', '±']}
        rows={shownRows(stiffness).map(({ fromTipM, EINm2, lowNm2, highNm2 }) => [
          writer.length(fromTipM),
          threeDigits(EINm2),
          `${threeDigits(lowNm2)} to ${threeDigits(highNm2)}`,
          `${Math.round((Math.sqrt(highNm2 / lowNm2) - 1) * 100)} %`,
        ])}
      />
    </details>
  );
}

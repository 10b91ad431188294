import type { StiffnessBandRow } from '../../../engine/stiffness/request.ts';
import { shownRows, threeDigits } from '../../../words/stiffness.ts';
import { Figure } from '../../fields/figure.tsx';
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
      >
        {shownRows(stiffness).map(({ fromTipM, EINm2, lowNm2, highNm2 }) => (
          <tr key={fromTipM}>
            <th scope="row">
              <Figure text={writer.length(fromTipM)} />
            </th>
            <td>{threeDigits(EINm2)}</td>
            <td>
              {threeDigits(lowNm2)} to {threeDigits(highNm2)}
            </td>
            <td>{Math.round((Math.sqrt(highNm2 / lowNm2) - 1) * 100)} %</td>
          </tr>
        ))}
      </Table>
    </details>
  );
}

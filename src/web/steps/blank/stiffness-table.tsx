import type { StiffnessBandRow } from '../../../engine/stiffness/request.ts';
import { shownRows, threeDigits } from '../../../words/stiffness.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useShop } from '../../read/shop.tsx';

/** The chart in figures. */
export function StiffnessTable({ stiffness }: { stiffness: readonly StiffnessBandRow[] }) {
  const { writer } = useShop();
  return (
    <details className="figures-twin">
      <summary>The chart in figures</summary>
      <TableFrame label="Stiffness in figures">
        <table className="figures-table">
          <caption className="visually-hidden">Stiffness EI along the blank</caption>
          <thead>
            <tr>
              <th scope="col">From tip</th>
              <th scope="col">EI in N·m²</th>
              <th scope="col">95 % band</th>
              <th scope="col">±</th>
            </tr>
          </thead>
          <tbody>
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
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}

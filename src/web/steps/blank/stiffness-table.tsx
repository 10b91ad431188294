import type { StiffnessBandRow } from '../../../engine/stiffness/request.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useShop } from '../../read/shop.tsx';

/** Rows shown of the many that were computed. */
const every = 5;

/** The chart in figures. */
export function StiffnessTable({ stiffness }: { stiffness: readonly StiffnessBandRow[] }) {
  const { system } = useShop();
  const shown = stiffness.filter((_, index) => index % every === 0);
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
            {shown.map(({ fromTipM, EINm2, lowNm2, highNm2 }) => (
              <tr key={fromTipM}>
                <th scope="row">
                  <Figure text={formatLength(fromTipM, { system, decimals: 0, denominator: 8 })} />
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

function threeDigits(value: number): string {
  return Number(value.toPrecision(3)).toString();
}

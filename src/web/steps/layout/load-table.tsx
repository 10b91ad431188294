import { type StrainLevels, strainVerdict } from '../../../engine/bench/strain.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';

interface LoadTableProps {
  names: readonly string[];
  loads: readonly RuledLoad[];
  rest: RuledLoad | undefined;
  strain: StrainLevels;
  system: UnitSystem;
}

/** What every load of the ladder does to the tip and to the surface: the bend's twin in figures. */
export function LoadTable({ names, loads, rest, strain, system }: LoadTableProps) {
  const show = (lengthM: number) => formatLength(lengthM, { system, denominator: 8, decimals: 0 });
  return (
    <TableFrame label="Loads in figures" className="close-table">
      <table className="figures-table stacked">
        <caption>Under each load</caption>
        <thead>
          <tr>
            <th scope="col">load</th>
            <th scope="col">tip out</th>
            <th scope="col">tip above</th>
            <th scope="col">tip drop</th>
            <th scope="col">strain</th>
            <th scope="col">at, from tip</th>
          </tr>
        </thead>
        <tbody>
          {loads.map((load, i) => (
            <tr key={`${names[i]}${i}`}>
              <th scope="row">{names[i]}</th>
              <td data-label="tip out">
                <Figure text={show(load.xM[0])} />
              </td>
              <td data-label="tip above">
                <Figure text={show(load.yM[0]).replace('-', '−')} />
              </td>
              <td data-label="tip drop">{rest && <Figure text={show(rest.yM[0] - load.yM[0])} />}</td>
              <td data-label="strain">
                {load.strain.percent.toFixed(2)} %
                {strainVerdict(load.strain.percent, strain) !== 'within' && (
                  <span className="quiet small"> only computed</span>
                )}
              </td>
              <td data-label="at, from tip" className="quiet">
                <Figure text={show(load.strain.fromTipM)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small quiet">
        The tip’s place counts from the front of the grip, its drop from where it hangs without a weight.
      </p>
    </TableFrame>
  );
}

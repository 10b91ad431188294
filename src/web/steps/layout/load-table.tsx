import { type StrainLevels, strainVerdict } from '../../../engine/bench/strain.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import { Table } from '../../parts/sheet/table.tsx';

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
    <Table
      label="Loads in figures"
      frame="close-table"
      className="stacked"
      caption="Under each load"
      note={
        <p className="small quiet">
          The tip’s place counts from the front of the grip, its drop from where it hangs without a weight.
        </p>
      }
      heads={['load', 'tip out', 'tip above', 'tip drop', 'strain', 'at, from tip']}
      rows={loads.map((load, i) => [
        names[i],
        show(load.xM[0]),
        show(load.yM[0]).replace('-', '−'),
        rest && show(rest.yM[0] - load.yM[0]),
        {
          of: (
            <>
              {load.strain.percent.toFixed(2)} %
              {strainVerdict(load.strain.percent, strain) !== 'within' && (
                <span className="quiet small"> only computed</span>
              )}
            </>
          ),
        },
        { of: show(load.strain.fromTipM), className: 'quiet' },
      ])}
    />
  );
}

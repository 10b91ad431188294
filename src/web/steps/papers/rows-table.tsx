import { Button } from 'react-aria-components';
import type { Row } from '../../../record/document.ts';
import type { DeedId } from '../../../words/deeds.ts';
import { Field } from '../../fields/field.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';

interface Column {
  field: string;
  head: string;
  /** Of the field in row `n`, counted from 1. */
  label(n: number): string;
  folds?: boolean;
  /** What holds while it is empty. */
  pale?(row: Row): string | undefined;
}

interface RowsTableProps {
  label: string;
  collection: string;
  rows: readonly Row[];
  /** The first has the room. */
  columns: readonly [Column, ...Column[]];
  /** What is struck, and the deed it is kept as. */
  strike: { deed: DeedId; thing(n: number): string };
  /** The first column runs over several lines. */
  foldsFirst?: boolean;
}

/** Rows of the record as a table of fields; each may be struck. */
export function RowsTable({ label, collection, rows, columns, strike, foldsFirst }: RowsTableProps) {
  return (
    <Table
      label={label}
      className="papers-table stacked"
      heads={[...columns.map(({ head }) => head), { spoken: 'Remove' }]}
    >
      {rows.map((row, i) => (
        <tr key={row.id}>
          {columns.map((column, k) => (
            <td
              key={column.field}
              className={k > 0 ? undefined : foldsFirst ? 'papers-wide papers-folds' : 'papers-wide'}
              data-label={k > 0 ? column.head : undefined}
            >
              <Field
                labelHidden
                folds={column.folds}
                label={column.label(i + 1)}
                pale={column.pale?.(row)}
                path={[collection, row.id, column.field]}
              />
            </td>
          ))}
          <td>
            <Strike path={[collection, row.id, 'gone']} deed={strike.deed} thing={strike.thing(i + 1)} />
          </td>
        </tr>
      ))}
    </Table>
  );
}

function Strike({ path, deed, thing }: { path: [string, string, string]; deed: DeedId; thing: string }) {
  const { write } = useBuild();
  return (
    <Button className="plain" onPress={() => write(deed, [{ path, value: true }])}>
      Remove<span className="visually-hidden"> {thing}</span>
    </Button>
  );
}

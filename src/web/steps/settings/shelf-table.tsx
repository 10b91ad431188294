import { Link } from 'wouter';
import type { Spread } from '../../../engine/sureness/spread.ts';
import type { Writer } from '../../../words/writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** One build of the shelf as its job left it. */
export interface ShelfRow {
  build: string;
  title: string;
  /** Why nothing can be said of it. */
  reason?: string;
  /** Of the proposed marks on the most probable blank, 1 is the limit; and on those that fit. */
  worstRead?: number;
  worst?: { [End in keyof Spread]: number | null };
  marksPlusMinusM?: (number | null)[];
  /** Blanks on which the guides could be placed anew. */
  blanks?: number;
  /** On 95 of 100 blanks the worst reading of these marks is at most this share above the best one's. */
  costOfKeeping?: number | null;
}

/** Per build: its worst reading with its range, and how far its marks may lie off. */
export function ShelfTable({ rows }: { rows: readonly ShelfRow[] }) {
  return (
    <Table
      label="How sure every build is"
      heads={[
        'Build',
        'Worst reading; 1 is its limit',
        '95 of 100 blanks lie within',
        'Best places move by ±, at most',
        'Keeping these marks then costs',
      ]}
    >
      {rows.map((row) => (
        <tr key={row.build}>
          <th scope="row">
            <Link href={`/builds/${row.build}/layout`}>{row.title || 'Untitled build'}</Link>
          </th>
          <Figures row={row} />
        </tr>
      ))}
    </Table>
  );
}

function Figures({ row: { reason, worstRead, worst, ...marks } }: { row: ShelfRow }) {
  const { writer } = useShop();
  if (reason !== undefined || worstRead === undefined)
    return (
      <td colSpan={4} className="quiet job-reason">
        {reason}
      </td>
    );
  const { low, high } = worst ?? { low: null, high: null };
  return (
    <>
      <td>{worstRead.toFixed(2)}</td>
      <td>{low === null || high === null ? 'not known' : `${low.toFixed(2)} to ${high.toFixed(2)}`}</td>
      <td>
        <Figure text={widest(marks, writer)} />
      </td>
      <td>{costOf(marks)}</td>
    </>
  );
}

function widest(
  { marksPlusMinusM = [], blanks = 0 }: Pick<ShelfRow, 'marksPlusMinusM' | 'blanks'>,
  writer: Writer,
): string {
  const known = marksPlusMinusM.filter((value) => value !== null);
  return blanks < 2 || known.length === 0 ? 'not known' : writer.tick(Math.max(...known));
}

function costOf({ costOfKeeping, blanks = 0 }: Pick<ShelfRow, 'costOfKeeping' | 'blanks'>): string {
  if (typeof costOfKeeping !== 'number' || blanks < 2) return 'not known';
  return `up to ${Math.ceil(100 * costOfKeeping)} % of the reading`;
}

import { Button } from 'react-aria-components';
import type { Change } from '../../../record/operation.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { numberOf, textOf } from '../../read/values.ts';
import { RowsTable } from './rows-table.tsx';

/** What went into the rod, with lot and dye numbers: the thread colour in ten years’ time. */
export function PartsUsedPart() {
  const { rows, write, newRowId } = useBuild();
  const parts = rows('parts');
  const put = (what: string, order: number): Change[] => {
    const id = newRowId();
    return [
      { path: ['parts', id, 'order'], value: order },
      ...(what === '' ? [] : [{ path: ['parts', id, 'what'] as const, value: what }]),
      { path: ['parts', id, 'stage'], value: stageOf(what) },
    ];
  };
  const fromOrder = () => {
    const known = new Set(parts.map((row) => textOf(row, 'what')));
    const fresh = rows('quoteLines')
      .filter((row) => numberOf(row, 'count') !== 0)
      .flatMap((row) => textOf(row, 'what') ?? [])
      .filter((what) => !known.has(what));
    write(
      'partsFromOrder',
      fresh.flatMap((what, i) => put(what, parts.length + i)),
    );
  };
  return (
    <Part
      anchor="used"
      folded
      holds={['parts/']}
      title="What it is made of"
      aside="lot and dye numbers, for the day it comes back"
    >
      {parts.length > 0 && (
        <RowsTable
          label="Parts used"
          collection="parts"
          rows={parts}
          columns={[
            { field: 'what', head: 'Part', label: (n) => `Part used ${n}`, folds: true },
            { field: 'stage', head: 'For', label: (n) => `Part used ${n} for` },
            { field: 'lot', head: 'Lot', label: (n) => `Lot of part used ${n}` },
            { field: 'dye', head: 'Dye', label: (n) => `Dye of part used ${n}` },
          ]}
          strike={{ deed: 'removePart', thing: (n) => `part used ${n}` }}
        />
      )}
      <div className="print-line" data-path="parts/new" tabIndex={-1}>
        {rows('quoteLines').length > 0 && (
          <Button className="button" onPress={fromOrder}>
            Take over from the order
          </Button>
        )}
        <Button className="button" onPress={() => write('addPart', put('', parts.length))}>
          Add a part
        </Button>
      </div>
    </Part>
  );
}

function stageOf(what: string): string {
  if (/finish|epoxy/i.test(what)) return 'finish';
  if (/thread/i.test(what)) return 'wraps';
  if (/guide|tip-top|keeper/i.test(what)) return 'guides';
  if (/grip|seat|check|arbor|cork/i.test(what)) return 'handle';
  return /blank/i.test(what) ? 'blank' : 'other';
}

import { Button } from 'react-aria-components';
import type { Change } from '../../../record/operation.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useBuild } from '../../read/build-context.ts';
import { numberOf, textOf } from '../../read/values.ts';

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
        <TableFrame label="Parts used">
          <table className="figures-table papers-table stacked">
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col">For</th>
                <th scope="col">Lot</th>
                <th scope="col">Dye</th>
                <th scope="col">
                  <span className="visually-hidden">Strike</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {parts.map((row, i) => (
                <tr key={row.id}>
                  <td className="papers-wide">
                    <Field labelHidden folds label={`Part used ${i + 1}`} path={['parts', row.id, 'what']} />
                  </td>
                  <td data-label="For">
                    <Field labelHidden label={`Part used ${i + 1} for`} path={['parts', row.id, 'stage']} />
                  </td>
                  <td data-label="Lot">
                    <Field labelHidden label={`Lot of part used ${i + 1}`} path={['parts', row.id, 'lot']} />
                  </td>
                  <td data-label="Dye">
                    <Field labelHidden label={`Dye of part used ${i + 1}`} path={['parts', row.id, 'dye']} />
                  </td>
                  <td>
                    <Button
                      className="plain"
                      onPress={() => write('removePart', [{ path: ['parts', row.id, 'gone'], value: true }])}
                    >
                      Strike<span className="visually-hidden"> part used {i + 1}</span>
                    </Button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
      <div className="print-line">
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

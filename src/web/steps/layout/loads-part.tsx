import { Button } from 'react-aria-components';
import type { LineChoices } from '../../../engine/flow/choices.ts';
import type { LoadLadder } from '../../../engine/flow/loads.ts';
import { usualDragKg } from '../../../engine/kinds/line-load.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { rowChanges } from '../../../record/operation.ts';
import { dragInWords } from '../../../words/drag.ts';
import type { Writer } from '../../../words/writer.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { textOf } from '../../read/values.ts';

export interface LoadsPartProps {
  loads: LoadLadder;
  /** What the rod is fished with; undefined of a fly rod. */
  line: LineChoices | undefined;
  writer: Writer;
  asksSide: boolean;
}

/** The load ladder and how the weights are hung. */
export function LoadsPart({ loads, line, writer, asksSide }: LoadsPartProps) {
  const { rows, single, write, newRowId } = useBuild();
  const ladder = rows('ladder');
  const tied = textOf(single('layout'), 'loadBy') === 'tied';
  const grams = (kg: number) => formatGrams(kg, 0);
  const own = () =>
    write(
      'ownLadder',
      loads.kg.flatMap((kg, i) => {
        const row = newRowId();
        return rowChanges('ladder', row, { order: i + 1, load: { si: kg, text: grams(kg) } });
      }),
    );
  const add = () => write('addLoad', [{ path: ['ladder', newRowId(), 'order'], value: ladder.length + 1 }]);
  const putAway = (row: string) => write('removeLoad', [{ path: ['ladder', row, 'gone'], value: true }]);
  return (
    <Part
      folded
      holds={[
        'line/-/test',
        'line/-/drag',
        'line/-/lure',
        'ladder',
        'layout/-/loadBy',
        'layout/-/buttAngle',
        'layout/-/guidesSide',
        'layout/-/tautLine',
      ]}
      title="Load ladder"
      aside="no layout is even at every load; it is judged over all of them"
    >
      <Field path={['layout', '-', 'loadBy']} />
      {ladder.length === 0 ? (
        <p>
          {loads.kg.map(grams).join(', ') || 'No loads'} follow this blank’s power: 0.3, 0.8, 2 and 5 times
          the weight that drops the tip by a third of the free length, the rod held level at the grip.{' '}
          <Button className="inline" onPress={own}>
            Choose your own
          </Button>
        </p>
      ) : (
        <div className="fields-row loads-row" data-group="">
          {ladder.map((row, i) => (
            <div key={row.id} className="load-field">
              <Field label={`Load ${i + 1}`} path={['ladder', row.id, 'load']} />
              <Button className="plain" onPress={() => putAway(row.id)}>
                Remove<span className="visually-hidden"> load {i + 1}</span>
              </Button>
            </div>
          ))}
          <Button className="button" onPress={add}>
            Add a load
          </Button>
        </div>
      )}
      {line && (
        <>
          <div className="fields-row" data-group="">
            <Field path={['line', '-', 'test']} />
            <Field
              path={['line', '-', 'drag']}
              usual={line.testKg === undefined ? undefined : usualDragKg(line.testKg)}
            />
            <Field path={['line', '-', 'lureLeast']} />
            <Field path={['line', '-', 'lureMost']} />
          </div>
          {line.dragKg !== undefined && <p>{dragInWords(line.dragKg, loads.kg, writer)}</p>}
        </>
      )}
      <div className="fields-row">
        {tied && <Field path={['layout', '-', 'tautLine']} />}
        <Field path={['layout', '-', 'buttAngle']} />
        {asksSide && <Field path={['layout', '-', 'guidesSide']} usual="under" />}
      </div>
    </Part>
  );
}

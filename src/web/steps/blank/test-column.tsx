import { type ShapePoint, shapeAt } from '../../../engine/flow/expected-reading.ts';
import type { Row } from '../../../record/document.ts';
import { Field } from '../../fields/field.tsx';
import { quantityOf, siOf, textOf } from '../../read/values.ts';
import { ReadingRow } from './reading-row.tsx';
import type { TestRows } from './reading-rows.ts';
import { useExpected } from './use-expected.ts';
import { useGateFocus } from './use-gate-focus.ts';
import { useHeavyLoad } from './use-heavy-load.ts';

interface TestColumnProps {
  rows: TestRows;
  setup: Row;
  /** The set-up's. */
  name: string;
  /** Of the weight, from 0. */
  order: number;
}

/** One weight of a set-up, and the drops read under it; a value, Enter, the next value. */
export function TestColumn({ rows, setup, name, order }: TestColumnProps) {
  const { test, readings } = rows;
  const tooHeavy = useHeavyLoad(test, setup);
  // What was read is past asking for.
  const isOpen = readings.some((reading) => siOf(reading, 'drop') === undefined);
  const heavy = isOpen ? tooHeavy : undefined;
  const column = useGateFocus(heavy !== undefined);
  const hung = quantityOf(test.fields.hung)?.text ?? '';
  const shape = useExpected(setup, siOf(test, 'hung') ?? 0);
  return (
    <fieldset ref={column} className="test-column">
      <legend className="visually-hidden">
        Weight {order + 1} of {name}
      </legend>
      <div className="reading reading-weight">
        <span className="reading-word" aria-hidden="true">
          hang
        </span>
        <Field labelHidden path={['tests', test.id, 'hung']} passedOver />
      </div>
      {heavy && (
        <div className="gate" role="note">
          <p className="attention">{heavy}</p>
          <Field path={['blank', '-', 'ferrulesBound']} />
        </div>
      )}
      {readings.map((reading) => (
        <ReadingRow
          key={reading.id}
          reading={reading}
          upperEdge={textOf(setup, 'edge') === 'upper'}
          hung={hung}
          expected={shape && expectedAt(shape, reading)}
          gated={heavy !== undefined}
        />
      ))}
    </fieldset>
  );
}

/** What should be read there, downwards [m]. */
function expectedAt(shape: readonly ShapePoint[], { fields }: Row): number | undefined {
  if (fields.atClamp === true) return shape.at(-1)?.readM;
  const at = quantityOf(fields.fromTip);
  return at && shapeAt(shape, at.si).readM;
}

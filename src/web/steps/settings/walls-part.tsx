import { Button } from 'react-aria-components';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { readWalls, type Wall } from '../../../record/read-walls.ts';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';
import { WallCheck } from './wall-check.tsx';

/** Printed by default: eight surround a rod well. */
const marksOfWall = 8;

/** Marks pinned up for good and measured once: every later picture takes their places from here. */
export function WallsPart() {
  const { document, write, newRowId } = useShop();
  const walls = readWalls(document);
  const add = () => write('addWall', newWall(walls.length, newRowId));
  return (
    <Part
      folded
      title="The wall"
      aside={walls.length === 0 ? 'printed marks, measured once' : walls.map(({ name }) => name).join(', ')}
      holds={['walls/', 'wallMarks/']}
      tools={
        <Button className="button" onPress={add}>
          Add a wall
        </Button>
      }
    >
      <p>
        Print the reference marks (Load test, “How to take the picture”), pin them flat round where the blank
        bends, and measure each from the first: to the right, and up. Every picture then finds its marks’
        places here.
      </p>
      {walls.map((wall) => (
        <WallFields key={wall.id} wall={wall} />
      ))}
    </Part>
  );
}

function newWall(count: number, newRowId: () => string): Change[] {
  const id = newRowId();
  const zero = { si: 0, text: '0' };
  return [
    ...rowChanges('walls', id, { order: count }),
    ...Array.from({ length: marksOfWall }, (_, i) =>
      rowChanges('wallMarks', newRowId(), {
        order: i,
        wall: id,
        number: i + 1,
        ...(i === 0 ? { atX: zero, atY: zero } : {}),
      }),
    ).flat(),
  ];
}

function WallFields({ wall }: { wall: Wall }) {
  const { write, newRowId } = useShop();
  const { id, name, marks } = wall;
  const measured = marks.filter(({ atM }) => atM).length;
  const more = () =>
    write(
      'addMark',
      rowChanges('wallMarks', newRowId(), { order: marks.length, wall: id, number: nextNumber(wall) }),
    );
  return (
    <section className="wall" aria-label={name}>
      <FieldsRow of="walls" row={id} names={['name', 'standOff', 'clampX', 'clampY']} />
      <Fold
        title="Places of the marks"
        aside={`${measured} of ${marks.length} measured`}
        startOpen={measured < 4}
      >
        <MarksTable wall={wall} />
        <Button className="button" onPress={more}>
          Another mark
        </Button>
      </Fold>
      <WallCheck wall={wall} />
      <Button className="plain" onPress={() => write('removeWall', rowChanges('walls', id, { gone: true }))}>
        Remove {name}
      </Button>
    </section>
  );
}

function nextNumber({ marks }: Wall): number {
  return Math.min(24, Math.max(0, ...marks.map(({ number }) => number)) + 1);
}

function MarksTable({ wall: { id, name, marks } }: { wall: Wall }) {
  const { write } = useShop();
  return (
    <Table
      label={`Marks of ${name}`}
      data-group={id}
      heads={['Mark', 'To the right', 'Up', { spoken: 'Remove' }]}
    >
      {marks.map(({ id: mark, number }) => (
        <tr key={mark}>
          <th scope="row">{number}</th>
          {(['atX', 'atY'] as const).map((field) => (
            <td key={field}>
              <Field
                label={`Mark ${number} ${field === 'atX' ? 'to the right' : 'up'}`}
                labelHidden
                path={['wallMarks', mark, field]}
              />
            </td>
          ))}
          <td>
            <Button
              className="plain"
              aria-label={`Remove mark ${number}`}
              onPress={() => write('removeMark', rowChanges('wallMarks', mark, { gone: true }))}
            >
              Remove
            </Button>
          </td>
        </tr>
      ))}
    </Table>
  );
}

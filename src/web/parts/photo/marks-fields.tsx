import { useState } from 'react';
import { Button } from 'react-aria-components';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { Field } from '../../fields/field.tsx';
import { useBuild } from '../../read/build-context.ts';
import { Table } from '../sheet/table.tsx';
import type { PhotoReading } from './photo-request.ts';
import type { FoundMarksState } from './use-found-marks.ts';

interface MarksFieldsProps {
  photo: LoadPhoto;
  reading: PhotoReading;
  sought: FoundMarksState;
}

/** How the marks' places are known, and their measures. */
export function MarksFields({ photo, reading, sought }: MarksFieldsProps) {
  return (
    <>
      <div className="photo-bar">
        <Button className="button" isDisabled={sought.looking} onPress={sought.look}>
          Look for printed marks
        </Button>
        <span role="status">{sought.words}</span>
      </div>
      <Field path={['loadPhotos', photo.id, 'marksBy']} />
      {photo.marksBy === 'rectangle' ? (
        <RectangleFields photo={photo} />
      ) : (
        <PlacesFields photo={photo} reading={reading} />
      )}
    </>
  );
}

function RectangleFields({ photo }: { photo: LoadPhoto }) {
  const field = (name: string) => ['loadPhotos', photo.id, name] as const;
  return (
    <div className="fields-row">
      <Field path={field('rectangleWidth')} />
      <Field path={field('rectangleHeight')} />
      <Field path={field('diagonalUp')} />
      <Field path={field('diagonalDown')} />
    </div>
  );
}

function PlacesFields({ photo, reading }: { photo: LoadPhoto; reading: PhotoReading }) {
  if (reading.marks.length === 0) return null;
  return (
    <>
      <Table
        label="Places of the marks"
        caption={
          <>
            Places of the marks <span className="quiet">from the first, level and upright</span>
          </>
        }
        heads={['Mark', 'To the right', 'Up']}
      >
        {reading.marks.map(({ id, name }) => (
          <tr key={id}>
            <th scope="row">{name}</th>
            {(['atX', 'atY'] as const).map((field) => (
              <td key={field}>
                <Field
                  label={`${name} ${field === 'atX' ? 'to the right' : 'up'}`}
                  labelHidden
                  path={['photoPlaces', id, field]}
                />
              </td>
            ))}
          </tr>
        ))}
      </Table>
      <Distances photo={photo} reading={reading} />
    </>
  );
}

/** Distances between two marks, measured as well: what finds a slip. */
function Distances({ photo, reading }: { photo: LoadPhoto; reading: PhotoReading }) {
  const { write, newRowId } = useBuild();
  const { marks } = reading;
  const [pair, setPair] = useState<[number, number]>([0, 2]);
  const nameOf = (id: string) => marks.find((mark) => mark.id === id)?.name ?? 'a mark taken away';
  const add = () => {
    const [from, to] = pair.map((i) => marks[i]?.id);
    if (from && to && from !== to)
      write('measureBetween', rowChanges('photoDistances', newRowId(), { photo: photo.id, from, to }));
  };
  return (
    <>
      {photo.distances.map(({ id, from, to }) => (
        <div key={id} className="photo-bar">
          <Field label={`From ${nameOf(from)} to ${nameOf(to)}`} path={['photoDistances', id, 'apart']} />
          <Button
            className="plain"
            onPress={() => write('removeDistance', rowChanges('photoDistances', id, { gone: true }))}
          >
            Take away
            <span className="visually-hidden">
              {' '}
              the distance from {nameOf(from)} to {nameOf(to)}
            </span>
          </Button>
        </div>
      ))}
      {marks.length > 1 && (
        <div className="photo-bar screen-only">
          <span className="quiet">Check a distance from</span>
          {pair.map((at, side) => (
            <select
              key={side}
              className="field-input photo-pick"
              aria-label={side === 0 ? 'From which mark' : 'To which mark'}
              value={at}
              onChange={(event) =>
                setPair(
                  side === 0 ? [Number(event.target.value), pair[1]] : [pair[0], Number(event.target.value)],
                )
              }
            >
              {marks.map(({ id, name }, i) => (
                <option key={id} value={i}>
                  {name}
                </option>
              ))}
            </select>
          ))}
          <Button className="button" onPress={add}>
            Add
          </Button>
        </div>
      )}
    </>
  );
}

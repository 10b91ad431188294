import { useRef, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { checkWall, type WallChecked } from '../../../image/index.ts';
import { fewestMarks, placesOn, type Wall } from '../../../record/read-walls.ts';
import { wallMarkRadiusMm } from '../../../sheets/wall-marks-sheet.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import type { Writer } from '../../../words/writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { openPhotoDesk } from '../../parts/photo/photo-desk.ts';
import { Table } from '../../parts/sheet/table.tsx';
import { reasonOf } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';

/** A picture of the empty wall: each mark's agreement, the scale, and how well a place between them is told. */
export function WallCheck({ wall }: { wall: Wall }) {
  const { writer } = useShop();
  const [checked, setChecked] = useState<WallChecked>();
  const [words, setWords] = useState('');
  const turn = useRef(0);
  const measured = wall.marks.filter(({ atM }) => atM).length;
  const look = async (file: File) => {
    turn.current += 1;
    const mine = turn.current;
    setChecked(undefined);
    setWords('Looking for the marks …');
    const answer = await lookAt(file, wall, writer);
    if (mine !== turn.current) return;
    setChecked(typeof answer === 'string' ? undefined : answer);
    setWords(typeof answer === 'string' ? answer : '');
  };
  return (
    <div className="wall-check">
      <FileTrigger acceptedFileTypes={['image/*']} onSelect={(files) => files?.[0] && void look(files[0])}>
        <Button className="button" isDisabled={measured < fewestMarks}>
          Check with a picture of the empty wall
        </Button>
      </FileTrigger>
      <div role="status">
        {words && <p className={checked ? undefined : 'attention'}>{words}</p>}
        {checked && <CheckedWall checked={checked} />}
      </div>
    </div>
  );
}

/** Why it could not be checked, where it could not. */
async function lookAt(file: File, wall: Wall, writer: Writer): Promise<WallChecked | string> {
  const desk = openPhotoDesk();
  try {
    const bitmap = await createImageBitmap(file).catch(() => undefined);
    if (!bitmap) return 'This browser cannot show that picture. Save it as JPEG and choose it again.';
    const picture = { widthPx: bitmap.width, heightPx: bitmap.height };
    bitmap.close();
    const stop = new AbortController().signal;
    const found = await desk.look(
      { does: 'find', address: file.name, blob: file },
      { signal: stop, progress: () => undefined },
    );
    if (found.length === 0)
      return 'No printed marks were found in this picture. They must be flat, whole and in the light.';
    const places = placesOn(
      wall,
      found.map(({ number }) => number),
    );
    if (places.size < fewestMarks)
      return `Only ${places.size} of this wall’s marks are in the picture (${found.map(({ number }) => number).join(', ')} were found); four are needed. Is it another wall?`;
    const answer = checkWall(found, (number) => places.get(number), picture, wallMarkRadiusMm / 1000);
    return answer.status === 'refused'
      ? answer.findings.map((one) => sentenceOf(one, writer)).join(' ')
      : answer;
  } catch (error) {
    return `The picture could not be looked at: ${reasonOf(error)}.`;
  } finally {
    desk.close();
  }
}

function CheckedWall({ checked: { marks, scale, goodToM } }: { checked: WallChecked }) {
  const { writer } = useShop();
  const percent = (share: number) => `${(100 * Math.abs(share)).toFixed(1)} %`;
  const isOff = Math.abs(scale.tooFarApart) > scale.plusMinus;
  return (
    <>
      <p className="verdict">
        <Figure text={`Good to ±${writer.fine(goodToM)} over this wall.`} />
      </p>
      <p className={isOff ? 'attention' : undefined}>
        {isOff
          ? `By the size of the printed rings the places are ${percent(scale.tooFarApart)} too ${scale.tooFarApart > 0 ? 'far apart' : 'near each other'} (±${percent(scale.plusMinus)}). Measure the longest distance again, and the 100 mm rule on the print.`
          : `The printed rings agree with the places’ scale within ±${percent(scale.plusMinus)}.`}
      </p>
      <p className="quiet">
        Level shows in no picture of an empty wall. Hold a plumb line to two marks; a lean above 0.7° is named
        by the pictures of a blank.
      </p>
      <Table label="Agreement of the marks" heads={['Mark', 'Off to the right', 'Off up']}>
        {marks.map(({ number, offM, leftOut }) => (
          <tr key={number} className={leftOut ? 'attention' : undefined}>
            <th scope="row">
              {number}
              {leftOut && ' measure again'}
            </th>
            {offM.map((off, axis) => (
              <td key={axis === 0 ? 'x' : 'y'}>
                <Figure text={`${off < 0 ? '−' : ''}${writer.fine(Math.abs(off))}`} />
              </td>
            ))}
          </tr>
        ))}
      </Table>
    </>
  );
}

import type { FoundMark } from '../../../image/index.ts';
import type { Row } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { placesOn, type Wall, wallOfMarks } from '../../../record/read-walls.ts';
import type { FieldValue } from '../../../record/schema.ts';

/**
 * Printed marks that were found, as places of a picture: one row for each number, the same on whatever device
 * they are found. Their places are those of the shop's wall they belong to; else marks that stayed on the wall since
 * another picture of this build keep the places they had; without such, the first found is what the others are counted
 * from.
 */
export function foundMarkChanges(
  photo: LoadPhoto,
  found: readonly FoundMark[],
  known: readonly Row[],
  walls: readonly Wall[],
): Change[] {
  const numbers = [...new Set(found.map(({ number }) => number))];
  const once = numbers.flatMap((number) => found.filter((mark) => mark.number === number).slice(0, 1));
  const wall = wallOfMarks(walls, numbers);
  const before = wall
    ? placesOnWall(wall, numbers)
    : once.map(({ number }) => placeBefore(number, photo.id, known));
  const anyBefore = before.some((place) => place !== undefined);
  const origin = { atX: { si: 0, text: '0' }, atY: { si: 0, text: '0' } };
  return [
    ...rowChanges('loadPhotos', photo.id, { marksBy: 'printed' }),
    ...once.flatMap(({ number, centrePx: [x, y] }, i) =>
      rowChanges('photoPlaces', `${photo.id}-m${number}`, {
        photo: photo.id,
        order: number,
        role: 'mark',
        number,
        pxX: Number(x.toFixed(2)),
        pxY: Number(y.toFixed(2)),
        found: 'found',
        gone: null,
        ...(before[i] ?? (i === 0 && !anyBefore ? origin : {})),
      }),
    ),
  ];
}

/** Numbers that stand twice: two sheets alike, or a mirror in the picture. */
export function repeatedNumbers(found: readonly FoundMark[]): number[] {
  const repeated = found.filter(({ number }, i) => found.findIndex((mark) => mark.number === number) < i);
  return [...new Set(repeated.map(({ number }) => number))];
}

/** As the wall was measured; a mark that it does not know has no place. */
function placesOnWall(wall: Wall, numbers: readonly number[]): Record<string, FieldValue>[] {
  const places = placesOn(wall, numbers);
  return numbers.map((number) => {
    const at = places.get(number);
    return at ? { atX: inMetres(at[0]), atY: inMetres(at[1]) } : { atX: null, atY: null };
  });
}

function inMetres(lengthM: number): FieldValue {
  return { si: lengthM, text: `${Number((lengthM * 1000).toFixed(2))} mm` };
}

function placeBefore(
  number: number,
  photo: string,
  known: readonly Row[],
): Record<string, FieldValue> | undefined {
  const row = known.findLast(
    ({ fields }) => fields.number === number && fields.photo !== photo && fields.atX && fields.atY,
  );
  return row && { atX: row.fields.atX, atY: row.fields.atY };
}

import { expect, test } from 'vitest';
import { imageFound } from '../../../image/image-kinds.ts';
import type { FoundMark } from '../../../image/index.ts';
import type { Change } from '../../../record/operation.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import type { Wall } from '../../../record/read-walls.ts';
import { traceWords } from '../../../words/trace.ts';
import { shopWriter } from '../../../words/writer.ts';
import { foundMarkChanges, repeatedNumbers } from './found-marks.ts';
import { orderAlong } from './order-along.ts';

const found = (number: number, x: number): FoundMark => ({
  number,
  centrePx: [x, 10],
  cornersPx: [],
  radiusPx: 30,
  sureness: 1,
  mirrored: false,
});
const photo = { id: 'p2' } as LoadPhoto;
const written = (changes: readonly Change[], row: string, field: string) =>
  changes.find(({ path }) => path[1] === row && path[2] === field)?.value;

test('marks that stayed on the wall keep the places they had in an earlier picture; a new one waits for its own', () => {
  const place = (mm: number) => ({ si: mm / 1000, text: `${mm} mm` });
  const known = [{ id: 'p1-m3', fields: { photo: 'p1', number: 3, atX: place(900), atY: place(40) } }];
  const changes = foundMarkChanges(photo, [found(2, 5), found(3, 700)], known, []);
  expect(written(changes, 'p2-m3', 'atX')).toEqual(place(900));
  expect(written(changes, 'p2-m2', 'atX')).toBeUndefined();
  expect(written(changes, 'p2', 'marksBy')).toBe('printed');
});

test('without earlier places the lowest number is what the others are counted from', () => {
  const changes = foundMarkChanges(photo, [found(2, 5), found(3, 700)], [], []);
  expect(written(changes, 'p2-m2', 'atX')).toEqual({ si: 0, text: '0' });
  expect(written(changes, 'p2-m3', 'atX')).toBeUndefined();
});

test('marks of a wall the shop measured take its places before any picture’s, and others are left without', () => {
  const wall = (id: string, numbers: readonly number[]): Wall => ({
    id,
    name: id,
    standOffM: undefined,
    clampAtM: undefined,
    marks: numbers.map((number) => ({ id: `${id}${number}`, number, atM: [number, 0.0125] })),
  });
  const known = [{ id: 'p1-m3', fields: { photo: 'p1', number: 3, atX: { si: 9, text: '9 m' } } }];
  const seen = [1, 2, 3, 4, 9].map((number) => found(number, 100 * number));
  const walls = [wall('bench', [1, 2, 3, 4]), wall('three', [1, 2, 3]), wall('door', [9, 10, 11, 12])];
  const changes = foundMarkChanges(photo, seen, known, walls);
  expect(written(changes, 'p2-m3', 'atX')).toEqual({ si: 3, text: '3000 mm' });
  expect(written(changes, 'p2-m3', 'atY')).toEqual({ si: 0.0125, text: '12.5 mm' });
  expect(written(changes, 'p2-m9', 'atX')).toBeNull();
  const strange = foundMarkChanges(photo, seen.slice(3), [], walls);
  expect(written(strange, 'p2-m9', 'atX')).toBeUndefined();
});

test('a number that stands twice is one row, and named', () => {
  const twice = [found(2, 5), found(2, 900), found(4, 50)];
  expect(repeatedNumbers(twice)).toEqual([2]);
  const rows = foundMarkChanges(photo, twice, [], []).filter(({ path }) => path[2] === 'pxX');
  expect(rows.map(({ path }) => path[1])).toEqual(['p2-m2', 'p2-m4']);
});

test('points between are put in order from butt to tip, however they were tapped', () => {
  const at = (x: number, y: number) => ({ px: [x, y] as const });
  const arc = Array.from({ length: 7 }, (_, i) => at(1000 * Math.cos(i / 4), 1000 * Math.sin(i / 4)));
  const [butt, tip] = [arc[0], arc[6]];
  const shuffled = [4, 1, 5, 2, 3].map((i) => arc[i]);
  expect(orderAlong(shuffled, butt, tip)).toEqual(arc.slice(1, 6));
  expect(orderAlong(shuffled, butt, undefined)).toEqual(shuffled);
});

test('what the tracing says names marks and taps as the sheet does', () => {
  const words = traceWords(
    [
      imageFound('marks[0].atM', 'camera/same-place', { mark: 1, otherMark: 2 }),
      imageFound('via[0]', 'trace/taps-close', { apartPx: 12, from: 'ends.butt' }),
      imageFound('ends', 'trace/lost', { xPx: 12, yPx: 40 }),
    ],
    ['lower left', 'mark 7'],
    shopWriter({ system: 'inch' }),
  );
  expect(words).toEqual([
    'Correct the lower left corner or mark 7. Both have the same place.',
    'Point between 1: Tap further away. This is 12 px from the butt; two taps need 40 px between them.',
    'Tap a point on the blank (“Point between”), past where it was lost: at the place marked ✕.',
  ]);
});

/** The walls a shop takes its pictures before: their marks, measured once. */
import type { DocumentState } from './operation.ts';
import { readRows } from './read-values.ts';
import { nameOfRow } from './row-names.ts';

export interface Wall {
  id: string;
  name: string;
  standOffM: number | undefined;
  /** Where a blank leaves the clamp. */
  clampAtM: [number, number] | undefined;
  marks: WallMarkAt[];
}
export interface WallMarkAt {
  id: string;
  number: number;
  /** To the right and up, from the wall's own corner; undefined until both are measured. */
  atM: [number, number] | undefined;
}

/** Marks that a picture needs to be measured by. */
export const fewestMarks = 4;

/** The walls in the order they were made. Never throws on any state. */
export function readWalls(shop: DocumentState): Wall[] {
  const marks = readRows(shop, 'wallMarks');
  return readRows(shop, 'walls').map((row, index) => ({
    id: row.id,
    name: nameOfRow('walls', row) ?? `Wall ${index + 1}`,
    standOffM: row.si('standOff'),
    clampAtM: pairOf(row.si('clampX'), row.si('clampY')),
    marks: marks
      .filter((mark) => mark.text('wall') === row.id)
      .flatMap((mark): WallMarkAt[] => {
        const number = mark.number('number');
        if (number === undefined) return [];
        return [{ id: mark.id, number, atM: pairOf(mark.si('atX'), mark.si('atY')) }];
      }),
  }));
}

function pairOf(x: number | undefined, y: number | undefined): [number, number] | undefined {
  return x === undefined || y === undefined ? undefined : [x, y];
}

/** The wall most of whose measured marks are among `numbers`, at least four; of two alike the later one. */
export function wallOfMarks(walls: readonly Wall[], numbers: readonly number[]): Wall | undefined {
  const known = walls
    .map((wall) => ({ wall, count: placesOn(wall, numbers).size }))
    .filter(({ count }) => count >= fewestMarks);
  const most = Math.max(...known.map(({ count }) => count));
  return known.findLast(({ count }) => count === most)?.wall;
}

/** Where the wall says that marks of these numbers are. */
export function placesOn({ marks }: Wall, numbers: readonly number[]): Map<number, [number, number]> {
  return new Map(
    marks.flatMap(({ number, atM }) => (atM && numbers.includes(number) ? [[number, atM] as const] : [])),
  );
}

/** A dark blank on a light wall, straightened: one row a pixel of its way; and a dark cable laid across. */
import { expect, test } from 'vitest';
import type { Strip } from '../trace/strip.ts';
import { tipSeen } from './tip-seen.ts';

const [rows, tipRow, columnPx, middle] = [110, 70, 0.5, 14];

function strip(cable: readonly [number, number] = [0, 0], faintBeyond = 0): Strip {
  const columns = 2 * middle + 1;
  const values = new Float32Array(rows * columns).fill(180);
  for (let u = 0; u < rows; u++) {
    for (let j = 0; j < columns; j++) {
      const isBlank = Math.abs(j - middle) * columnPx <= 1;
      if (u >= cable[0] && u < cable[1]) values[u * columns + j] = 30;
      else if (isBlank) values[u * columns + j] -= u < tipRow ? 60 : 60 * faintBeyond;
    }
  }
  return { rows, columns, columnPx, middle, values };
}
const seen = (one: Strip) => tipSeen(one, 40, 1)?.speaks ?? new Float64Array();

test('rows before the tip speak for the blank, rows after it against', () => {
  expect(new Set(seen(strip()).slice(0, tipRow))).toEqual(new Set([1]));
  expect(new Set(seen(strip()).slice(tipRow))).toEqual(new Set([-1]));
});

test('where a cable crosses, the picture tells nothing, and the blank goes on behind it', () => {
  const crossed = seen(strip([46, 52]));
  expect(new Set(crossed.slice(46, 52))).toEqual(new Set([0]));
  expect(crossed[64]).toBe(1);
  expect(crossed[75]).toBe(-1);
});

test('a cord or a wrap half as clear as the blank tells nothing', () => {
  expect(seen(strip([0, 0], 0.5))[80]).toBe(0);
});

test('before a shelf as dark as the blank nothing is told', () => {
  const one = strip();
  for (let u = 60; u < rows; u++) one.values.fill(121, u * 29, (u + 1) * 29);
  expect(seen(one)[50]).toBe(1);
  expect(new Set(seen(one).slice(80))).toEqual(new Set([0]));
});

test('where no blank stands out before the tip nothing is told', () => {
  expect(tipSeen({ ...strip(), values: new Float32Array(110 * 29).fill(180) }, 40, 1)).toBeUndefined();
});

test('a blank that goes on, straight or aside, is no end; where it ends nothing does', () => {
  const bent = strip();
  const at = (u: number) => u * 29 + middle + Math.round((u - tipRow) / 4);
  for (let u = tipRow; u < rows; u++) bent.values.fill(120, at(u) - 2, at(u) + 3);
  const goesOn = (one: Strip, row: number) => tipSeen(one, 40, 1)?.goesOn(row);
  expect(goesOn(strip(), tipRow - 20)).toBe(true);
  expect(goesOn(bent, tipRow)).toBe(true);
  expect(goesOn(strip(), tipRow)).toBe(false);
});

/** Painted marks before a camera of the painter's own (test/render); places and sizes are the painter's. */
import { describe, expect, test } from 'vitest';
import { paintMarkScene } from '../../../test/render/mark-scene.ts';
import { findMarks } from '../marks/find-marks.ts';
import { checkWall } from './wall-check.ts';

const radiusM = 0.042;
const scene = paintMarkScene({
  seed: 4,
  widthPx: 2400,
  heightPx: 1800,
  numbers: [1, 2, 3, 4, 5, 6, 7, 8],
  radiusM,
});
const { width, height, rgb } = scene.picture;
const found = findMarks({ width, height, channels: 3, data: rgb });
const picture = { widthPx: width, heightPx: height };
const truePlaces = new Map(scene.marks.map(({ number, atM }) => [number, [atM.x, atM.y] as const]));
const check = (places: (number: number) => readonly [number, number] | undefined) => {
  const answer = checkWall(found, places, picture, radiusM);
  if (answer.status === 'refused') throw new Error(answer.findings[0].code);
  return answer;
};

describe('a wall in a picture of it', () => {
  test('measured truly, every mark agrees within a millimetre, and the rings’ size with the scale', () => {
    const { marks, scale, goodToM, findings } = check((number) => truePlaces.get(number));
    expect(marks).toHaveLength(8);
    for (const { offM } of marks) expect(Math.hypot(...offM)).toBeLessThan(0.001);
    expect(Math.abs(scale.tooFarApart)).toBeLessThan(scale.plusMinus);
    expect(goodToM).toBeLessThan(0.005);
    expect(findings).toEqual([]);
  });

  test('with one mark 3 cm off names it and how far', () => {
    const moved = (number: number) => {
      const at = truePlaces.get(number);
      return at && number === 5 ? ([at[0] + 0.03, at[1]] as const) : at;
    };
    const { marks } = check(moved);
    const odd = marks.filter(({ leftOut }) => leftOut);
    expect(odd.map(({ number }) => number)).toEqual([5]);
    expect(odd[0].offM[0]).toBeCloseTo(-0.03, 2);
  });

  test('measured 6 % too long says so', () => {
    const { scale } = check((number) => {
      const at = truePlaces.get(number);
      return at && ([1.06 * at[0], 1.06 * at[1]] as const);
    });
    expect(scale.tooFarApart).toBeGreaterThan(Math.max(scale.plusMinus, 0.06 - scale.plusMinus));
    expect(scale.tooFarApart).toBeLessThan(0.06 + scale.plusMinus);
  });

  test('good to less where the marks are told worse', () => {
    let sign = 1;
    const rough = new Map(
      [...truePlaces].map(([number, [x, y]]) => {
        sign = -sign;
        return [number, [x + 0.003 * sign, y - 0.002 * sign] as const];
      }),
    );
    expect(check((number) => rough.get(number)).goodToM).toBeGreaterThan(
      1.5 * check((number) => truePlaces.get(number)).goodToM,
    );
  });

  test('with three known marks is refused', () => {
    const three = (number: number) => (number <= 3 ? truePlaces.get(number) : undefined);
    const answer = checkWall(found, three, picture, radiusM);
    expect(answer.status).toBe('refused');
  });
});

import { describe, expect, test } from 'vitest';
import { rectanglePlaces } from './rectangle-places.ts';

const distance = (a: readonly number[], b: readonly number[]) => Math.hypot(a[0] - b[0], a[1] - b[1]);

describe('a measured rectangle', () => {
  test('of 3, 4 and 5 fits (Pythagoras), without a diagonal it is not checked', () => {
    expect(rectanglePlaces({ widthM: 4, heightM: 3, diagonalUpM: 5, diagonalDownM: 5 })).toMatchObject({
      verdict: 'fits',
      cornersM: [
        [0, 0],
        [4, 0],
        [4, 3],
        [0, 3],
      ],
    });
    expect(rectanglePlaces({ widthM: 4, heightM: 3 }).verdict).toBe('not-checked');
  });
  test('out of square is corrected: its corners have the four measured distances again', () => {
    const [w, h, lean] = [1.8, 1.2, 0.02];
    const corners = [
      [0, 0],
      [w, 0],
      [w + h * Math.sin(lean), h * Math.cos(lean)],
      [h * Math.sin(lean), h * Math.cos(lean)],
    ];
    const [up, down] = [distance(corners[0], corners[2]), distance(corners[1], corners[3])];
    const answer = rectanglePlaces({ widthM: w, heightM: h, diagonalUpM: up, diagonalDownM: down });
    expect(answer.verdict).toBe('out-of-square');
    expect(answer.offSquareRad).toBeCloseTo(lean, 9);
    for (const [i, corner] of corners.entries())
      expect(distance(answer.cornersM[i], corner)).toBeLessThan(1e-9);
  });
  test('with one diagonal mistyped names it and what it ought to be', () => {
    for (const field of ['diagonalUpM', 'diagonalDownM'] as const) {
      const measured = { widthM: 4, heightM: 3, diagonalUpM: 5, diagonalDownM: 5, [field]: 5.2 };
      expect(rectanglePlaces(measured)).toMatchObject({ verdict: 'slip', suspects: [{ field, oughtM: 5 }] });
    }
  });
  test('with a side mistyped names both sides, the true value among them', () => {
    const answer = rectanglePlaces({ widthM: 4.1, heightM: 3, diagonalUpM: 5, diagonalDownM: 5 });
    expect(answer.verdict).toBe('slip');
    expect(answer.suspects[0].field).toBe('widthM');
    expect(answer.suspects[0].oughtM).toBeCloseTo(4, 9);
    expect(answer.suspects[1].field).toBe('heightM');
  });
  test('with one diagonal only, any of the three may be the slip', () => {
    const { verdict, suspects } = rectanglePlaces({ widthM: 4, heightM: 3, diagonalDownM: 5.5 });
    expect(verdict).toBe('slip');
    expect(suspects.map(({ field }) => field)).toEqual(['widthM', 'heightM', 'diagonalDownM']);
  });
  test('a diagonal shorter than a side asks for no impossible side', () => {
    const { suspects } = rectanglePlaces({ widthM: 4, heightM: 3, diagonalUpM: 2 });
    expect(suspects.map(({ field }) => field)).toEqual(['diagonalUpM']);
  });
});

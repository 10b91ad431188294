import { expect, test } from 'vitest';
import { besideFor, fitsInGlass, lowestFor, sidewaysRoom } from './worst-lens.ts';

test('in a small lens the limit alone stands beside the figure', () => {
  expect(besideFor('bend added, limit 0.051 1/m', 49, 112)).toBe('bend added, limit 0.051 1/m');
  expect(besideFor('bend added, limit 0.051 1/m', 36, 80)).toBe('limit 0.051 1/m');
  expect(besideFor('gap, limit 13⁄32 in', 40, 90)).toBe('gap, limit 13⁄32 in');
});

test('words that would cross the edge of the glass are left out', () => {
  expect(fitsInGlass('guide 8', 69, 70)).toBe(false);
  expect(fitsInGlass('guide 8', 60, 70)).toBe(true);
  expect(fitsInGlass('between guides 1 and 2', 60, 90)).toBe(false);
  expect(fitsInGlass('between guides 1 and 2', 65, 112)).toBe(true);
});

test('words low in the glass keep so near to its middle that their ends stay inside', () => {
  const [radius, down] = [84, 66];
  const room = sidewaysRoom('guide 11', down, radius);
  expect(room).toBeGreaterThan(0);
  expect(Math.hypot(room + 2 + 'guide 11'.length * 3.3, down + 4)).toBeCloseTo(radius, 6);
});

test('at the lowest place of words there is just no room to either side', () => {
  expect(sidewaysRoom('limit 15°', lowestFor('limit 15°', 50), 50)).toBeCloseTo(0, 9);
  expect(lowestFor('limit 15°', 50)).toBeGreaterThan(0);
});

import { expect, test } from 'vitest';
import { besideFor } from './worst-lens.ts';

test('in a small lens the limit alone stands beside the figure', () => {
  expect(besideFor('bend added, limit 0.051 1/m', 112)).toBe('bend added, limit 0.051 1/m');
  expect(besideFor('bend added, limit 0.051 1/m', 80)).toBe('limit 0.051 1/m');
  expect(besideFor('gap, limit 13⁄32 in', 90)).toBe('gap, limit 13⁄32 in');
});

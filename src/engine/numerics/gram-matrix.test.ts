import { expect, test } from 'vitest';
import { gramMatrix } from './gram-matrix.ts';
import { seededRandom } from './seeded-random.ts';

test.each([
  [1, 1],
  [5, 4],
  [3, 7],
])('every entry of the lower triangle is the product of two columns: %d rows, %d columns', (rows, n) => {
  const random = seededRandom(10 * rows + n);
  const b = Float64Array.from({ length: rows * n }, () => random() - 0.5);
  if (rows > 1) b.fill(0, n, 2 * n);
  const gram = gramMatrix(b, n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      let sum = 0;
      for (let d = 0; d < rows; d++) sum += b[d * n + i] * b[d * n + j];
      expect(gram[i * n + j]).toBeCloseTo(j <= i ? sum : 0, 14);
    }
  }
});

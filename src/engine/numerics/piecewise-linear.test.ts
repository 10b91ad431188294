import { expect, test } from 'vitest';
import {
  integralBetween,
  integralsOverCells,
  piecewiseLinear,
  reciprocalIntegralBetween,
  reciprocalIntegralsOverCells,
  valueAt,
  valuesAtPlaces,
} from './piecewise-linear.ts';
import { seededRandom } from './seeded-random.ts';

const random = seededRandom(3);
const ascending = (count: number, from: number) => {
  const x = [from];
  for (let i = 1; i < count; i++) x.push(x[i - 1] + 0.01 + random());
  return x;
};
const tables = [1, 2, 3, 17, 60].map((rows) =>
  piecewiseLinear(
    ascending(rows, 0.3),
    Array.from({ length: rows }, () => 0.05 + 3 * random()),
  ),
);
/** Midpoint rule with many points: knows nothing of the table's rows. */
const numeric = (f: (x: number) => number, from: number, to: number) => {
  const n = 20_000;
  const h = (to - from) / n;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += f(from + (i + 0.5) * h);
  return sum * h;
};

test.each(tables)('integrals are those of the function between and beyond its rows', (table) => {
  for (const [from, to] of [
    [0, 1],
    [0.35, 0.36],
    [0.1, 40],
  ]) {
    const plain = numeric((x) => valueAt(table, x), from, to);
    const reciprocal = numeric((x) => 1 / valueAt(table, x), from, to);
    expect(integralBetween(table, from, to) / plain).toBeCloseTo(1, 4);
    expect(reciprocalIntegralBetween(table, from, to) / reciprocal).toBeCloseTo(1, 4);
  }
});

test.each(tables)('one sweep over many cells gives what each cell gives', (table) => {
  const edges = Float64Array.from(ascending(80, 0), (x) => x / 2).reverse();
  edges[40] = table.x[Math.min(3, table.x.length - 1)]; // an edge on a row
  edges.sort().reverse();
  const [plain, reciprocal, values] = [0, 1, 2].map(() => new Float64Array(edges.length));
  integralsOverCells(table, edges, plain);
  reciprocalIntegralsOverCells(table, edges, reciprocal);
  valuesAtPlaces(table, edges, values);
  expect(values[0]).toBe(valueAt(table, edges[0]));
  for (let i = 1; i < edges.length; i++) {
    expect(plain[i]).toBeCloseTo(integralBetween(table, edges[i], edges[i - 1]), 11);
    expect(reciprocal[i]).toBeCloseTo(reciprocalIntegralBetween(table, edges[i], edges[i - 1]), 11);
    expect(values[i]).toBeCloseTo(valueAt(table, edges[i]), 12);
  }
});

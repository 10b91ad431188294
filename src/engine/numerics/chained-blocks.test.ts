import { expect, test } from 'vitest';
import { writtenHessian } from '../../../reference/space/written-hessian.ts';
import { type ChainedBlocks, chainedBlocks } from './chained-blocks.ts';
import { factorBlocks } from './factor-blocks.ts';
import { seededRandom } from './seeded-random.ts';
import { solveBlocks } from './solve-blocks.ts';
import { symmetricEigen } from './symmetric-eigen.ts';

/** Spans [8..5], [5..2], [2..], or none. */
function randomSystem(seed: number, ends: readonly number[], lift: number): ChainedBlocks {
  const random = seededRandom(seed);
  const draw = () => random() - 0.5;
  const system = chainedBlocks(9, 3);
  for (let i = 0; i < 9; i++) {
    for (let k = 0; k < 6; k++) system.diagonal[6 * i + k] = (k < 3 ? lift : 0) + draw();
    if (i > 0) for (let k = 0; k < 9; k++) system.off[9 * i + k] = draw();
    for (let k = 0; k < 6; k++) system.inner[6 * i + k] = draw();
  }
  system.spanCount = Math.max(0, ends.length - 1);
  for (let s = 0; s + 1 < ends.length; s++) {
    system.last[s] = ends[s];
    system.first[s] = ends[s + 1];
    system.weight[s] = 0.5 + random();
    for (let k = 0; k < 6; k++) system.lowEnd[6 * s + k] = draw();
  }
  return system;
}

const chains = [[], [8, 5, 2, -1], [8, 5], [6, 4, 0], [7, -1]];
const cases = chains.flatMap((ends) =>
  [4, 0.4].map((lift, k) => [ends, lift, 10 * ends.length + k] as const),
);

test.each(cases)('spans %j, lift %d: solves the written-out matrix', (ends, lift, seed) => {
  const system = randomSystem(seed, ends, lift);
  const matrix = writtenHessian(system);
  const random = seededRandom(seed + 100);
  const wanted = Float64Array.from({ length: 27 }, () => random() - 0.5);
  const x = Float64Array.from(matrix, (row) => row.reduce((sum, value, j) => sum + value * wanted[j], 0));
  factorBlocks(system);
  solveBlocks(system, x, x);
  for (let i = 0; i < 27; i++) expect(x[i]).toBeCloseTo(wanted[i], 8);
});

test.each(cases)('spans %j, lift %d: counts the eigenvalues below zero', (ends, lift, seed) => {
  const system = randomSystem(seed, ends, lift);
  const { values } = symmetricEigen(writtenHessian(system));
  expect(factorBlocks(system)).toBe(values.filter((value) => value < 0).length);
});

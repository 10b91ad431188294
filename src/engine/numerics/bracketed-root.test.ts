import { expect, test } from 'vitest';
import { bracketedRoot } from './bracketed-root.ts';

const options = { toleranceX: 1e-12, toleranceF: 1e-13, maxEvaluations: 60 };

test.each([
  { name: 'smooth', f: (x: number) => Math.exp(x) - 2, root: Math.log(2) },
  { name: 'kinked', f: (x: number) => Math.max(x - 0.7, 20 * (x - 0.7)), root: 0.7 },
  { name: 'flat at one end', f: (x: number) => x ** 9 - 0.1 ** 9, root: 0.1 },
  { name: 'falling', f: (x: number) => 0.25 - x * x, root: 0.5 },
])('a root is enclosed and found: $name', ({ f, root }) => {
  let evaluations = 0;
  const counted = (x: number) => {
    evaluations++;
    return f(x);
  };
  const { low, high } = bracketedRoot(
    counted,
    { low: { x: 0, f: f(0) }, high: { x: 1.3, f: f(1.3) } },
    options,
  );
  expect(Math.sign(low.f)).toBe(Math.sign(f(0)));
  expect(Math.min(Math.abs(low.x - root), Math.abs(high.x - root))).toBeLessThan(2e-3);
  expect(Math.min(Math.abs(low.f), Math.abs(high.f))).toBeLessThan(1e-12);
  expect(evaluations).toBeLessThan(60);
});

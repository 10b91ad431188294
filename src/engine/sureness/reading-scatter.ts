import { factorCholesky } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import type { SeenReading } from './readings-seen.ts';

/** Cholesky factor of W Wᵀ + t tᵀ + Σ: how readings that are taken together scatter before they are taken. */
export function readingScatter(readings: readonly SeenReading[]): Float64Array {
  const n = readings.length;
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      covariance[i * n + j] =
        dot(readings[i].bySpread, readings[j].bySpread) +
        readings[i].byTiltM * readings[j].byTiltM +
        (i === j ? readings[i].sigmaM ** 2 : 0);
    }
  }
  if (!factorCholesky(covariance, n)) throw new Error('readings with no scatter of their own');
  return covariance;
}

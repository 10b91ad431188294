/** Times the fit from three pictures of one simulated stand, clean and with a clamp that slipped. */
import { fit } from '../src/engine/stiffness/fit.ts';
import { fitBlankOf } from '../test/support/stand-blank.ts';
import { type Mishap, withMishap } from '../test/support/stand-mishaps.ts';

/** Median, ms; the first run warms up. */
export function timeStandFit(mishap: Mishap, times: number): number {
  const { blank, setups, seed } = withMishap(mishap, 9902, 1);
  const request = { blank: fitBlankOf(blank, seed + 9), setups };
  const runs = Array.from({ length: times + 1 }, () => {
    const started = performance.now();
    if (fit(request).status === 'refused') throw new Error('the three pictures were refused');
    return performance.now() - started;
  }).slice(1);
  return runs.sort((a, b) => a - b)[runs.length >> 1];
}

import { expect, test } from 'vitest';
import { mostLooks, watchForRest } from './at-rest.ts';

/** A difference of three pixels is seen (frame-check.test.ts); a weight on a blank swings at 0.3 to 6 Hz. */
const seenPx = 2.5;

/** How far a blank swings when it is taken to rest; 0 where it never is. */
function amplitudeTaken(periodS: number, phase: number, { amplitudePx = 30, decayS = 20 } = {}): number {
  const watch = watchForRest<number>((before, now) => Math.abs(now - before) > seenPx);
  let atS = 0;
  for (let look = 0; look < mostLooks; look++) {
    const amplitude = amplitudePx * Math.exp(-atS / decayS);
    const { rests, nextLookMs } = watch.see(amplitude * Math.sin(2 * Math.PI * (atS / periodS + phase)));
    if (rests) return amplitude;
    atS += nextLookMs / 1000;
  }
  return 0;
}

test('a swing of more than eight pixels is never taken for rest, whatever its period', () => {
  const taken: string[] = [];
  for (let periodS = 0.15; periodS < 4; periodS *= 1.013)
    for (let phase = 0; phase < 1; phase += 0.025)
      if (amplitudeTaken(periodS, phase) > 8) taken.push(`${periodS} s at ${phase}`);
  expect(taken).toEqual([]);
});

test('what hangs still is taken within a second and a half', () => {
  const watch = watchForRest<number>((before, now) => before !== now);
  let waitedMs = 0;
  for (let seen = watch.see(1); !seen.rests; seen = watch.see(1)) waitedMs += seen.nextLookMs;
  expect(waitedMs).toBe(1200);
});

/**
 * Readings that are proposed against readings at random, from the same list, on simulated benches that start with the
 * ten-minute readings; in a long run (POLICY_BENCHES=12) twelve benches on seeds that were used for nothing else. Equal sureness: what the middle one of three
 * random runs has after 24 further readings, on the bench's own yardstick (test/support/reading-policy.ts).
 */
import { expect, test } from 'vitest';
import { readByPolicy } from '../../../test/support/reading-policy.ts';
import { nextReadingDefaults } from './next-reading.ts';

const benches = Number(process.env.POLICY_BENCHES ?? 1);
const first = 5;
const options = benches > 1 ? nextReadingDefaults : { ...nextReadingDefaults, drawn: 0, most: 8 };

test('fewer than half as many proposed readings as random ones make the marks equally sure', {
  timeout: benches * 120_000,
}, () => {
  let [proposed, random] = [0, 0];
  const from = benches > 1 ? 8001 : 1;
  for (let seed = from; seed < from + benches; seed++) {
    const runs = [1, 2, 3].map((chance) => {
      const steps = readByPolicy(seed, 'at random', ({ readings }) => readings >= first + 24, { chance });
      return steps[steps.length - 1];
    });
    const middle = runs.sort((a, b) => a.price - b.price)[1];
    const wanted = readByPolicy(
      seed,
      'proposed',
      ({ price, readings }) => price <= middle.price || readings >= middle.readings,
      { options },
    );
    proposed += wanted[wanted.length - 1].readings - first;
    random += middle.readings - first;
    console.info(
      `bench ${seed}: ${wanted[wanted.length - 1].readings - first} proposed, ${middle.readings - first} at random`,
    );
  }
  expect(proposed).toBeLessThan(0.5 * random);
});

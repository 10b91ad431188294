import { expect, test } from 'vitest';
import { randomAbsurdRequest } from '../../../reference/absurd-requests.ts';
import { type Harshness, randomBendRequest } from '../../../reference/population.ts';
import { followedInFineSteps, judgeBend } from '../../../reference/soak-judge.ts';

// 10,000 rods in all; `npm run soak` takes ten times as many
const population: [Harshness, number, number][] = [
  ['bench', 1, 7000],
  ['harsh', 1, 3000],
];

test.each(population)(
  '%s rods from seed %i, %i of them: converged or a named reason, finite, in bounded steps',
  (harshness, first, count) => {
    const unsound: string[] = [];
    let converged = 0;
    for (let seed = first; seed < first + count; seed++) {
      const judged = judgeBend(randomBendRequest(seed, harshness));
      if (judged.fault) unsound.push(`seed ${seed}: ${judged.fault}`);
      if (judged.status === 'converged') converged++;
    }
    expect(unsound).toEqual([]);
    expect(converged / count).toBeGreaterThan(harshness === 'bench' ? 0.999 : 0.98);
  },
);

test.each(population)(
  '%s rods from seed %i: the bend is the one that fine load steps lead to',
  (harshness, first) => {
    const elsewhere: string[] = [];
    for (let seed = first; seed < first + 250; seed++) {
      const apartRad = followedInFineSteps(randomBendRequest(seed, harshness));
      if (apartRad > 1e-6) elsewhere.push(`seed ${seed}: ${apartRad} rad apart`);
    }
    expect(elsewhere).toEqual([]);
  },
);

test('what no builder means is bent or refused by name all the same', () => {
  const unsound: string[] = [];
  for (let seed = 1; seed <= 200; seed++) {
    const { fault } = judgeBend(randomAbsurdRequest(seed));
    if (fault) unsound.push(`seed ${seed}: ${fault}`);
  }
  expect(unsound).toEqual([]);
});

import { expect, test } from 'vitest';
import { rodTables } from '../bend/rod.ts';
import { firstMode } from './first-mode.ts';
import { frequency } from './frequency.ts';

// β₁L = 1.8751041 of the clamped uniform beam (Blevins 1979, Formulas for Natural Frequency and Mode Shape, table 8-1)
test('a uniform rod swings as the closed form says, and all of its stiffness and mass is counted', () => {
  const rod = {
    lengthM: 1.6,
    stiffness: [{ fromTipM: 0, EINm2: 2.5 }],
    massPerLength: [{ fromTipM: 0, kgPerM: 0.02 }],
  };
  const mode = firstMode(rodTables(rod));
  const hz = (1.8751041 ** 2 / (2 * Math.PI)) * Math.sqrt(2.5 / (0.02 * 1.6 ** 4));
  expect(mode?.hz).toBeCloseTo(hz, 5);
  const sum = (shares?: Float64Array) => shares?.reduce((total, share) => total + share, 0);
  expect(sum(mode?.byStiffness)).toBeCloseTo(1, 12);
  expect(sum(mode?.byMass)).toBeCloseTo(-1, 12);
});

test('a tapered rod swings as subspace iteration finds it', () => {
  const rows = Array.from({ length: 21 }, (_, i) => i / 20);
  const rod = {
    lengthM: 2.4,
    stiffness: rows.map((s) => ({ fromTipM: 2.4 * s, EINm2: 0.05 + 20 * s ** 3 })),
    massPerLength: rows.map((s) => ({ fromTipM: 2.4 * s, kgPerM: 0.003 + 0.015 * s })),
  };
  const answer = frequency({ rod, modes: 1 });
  expect(answer.status).toBe('converged');
  if (answer.status === 'converged') expect(firstMode(rodTables(rod))?.hz).toBeCloseTo(answer.hz[0], 6);
});

test('what weighs nothing does not swing', () => {
  expect(firstMode(rodTables({ lengthM: 1, stiffness: [{ fromTipM: 0, EINm2: 1 }] }))).toBeUndefined();
});

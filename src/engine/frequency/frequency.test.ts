import { expect, test } from 'vitest';
import { assertGroup } from '../../../reference/cases/check.ts';
import {
  frequencyBlanks,
  frequencyPrinted,
  frequencyTapered,
  frequencyUniform,
  omegas,
  uniformRodWithMass as uniform,
} from '../../../reference/cases/frequency.ts';
import { taperedRod } from '../../../reference/cases/unit-rod.ts';
import type { PointMass } from '../bend/mesh.ts';
import type { Rod } from '../bend/rod.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import { frequency, frequencyDefaults } from './frequency.ts';

test.each([
  ['a uniform rod, bare and with a tip mass', frequencyUniform],
  ['complete and cut-off tapers', frequencyTapered],
  ['a printed table', frequencyPrinted],
  ['two invented blanks', frequencyBlanks],
])('published frequencies: %s', (_, group) => {
  assertGroup(group());
});

test('on a massless rod one mass swings on the spring 3EI/a³ and two solve their flexibility matrix', () => {
  const rod: Rod = { lengthM: 2, stiffness: [{ fromTipM: 0, EINm2: 5 }] };
  expect(omegas(rod, [{ fromTipM: 0.5, massKg: 0.2 }], 1)[0]).toBeCloseTo(
    Math.sqrt((3 * 5) / (0.2 * 1.5 ** 3)),
    9,
  );
  const [a, b, m, n] = [1.2, 2, 0.3, 0.1];
  const faa = a ** 3 / 15;
  const fbb = b ** 3 / 15;
  const fab = (a * a * (3 * b - a)) / 30;
  const trace = m * faa + n * fbb;
  const determinant = m * n * (faa * fbb - fab * fab);
  const root = Math.sqrt(trace * trace - 4 * determinant);
  const masses = [
    { fromTipM: 0.8, massKg: m },
    { fromTipM: 0, massKg: n },
  ];
  const found = omegas(rod, masses, 2);
  expect(found[0]).toBeCloseTo(Math.sqrt(2 / (trace + root)), 9);
  expect(found[1]).toBeCloseTo(Math.sqrt(2 / (trace - root)), 7);
});

test('mass left on part of the rod only is enough', () => {
  const rod: Rod = {
    ...uniform,
    massPerLength: [
      { fromTipM: 0.5, kgPerM: 0 },
      { fromTipM: 1, kgPerM: 1 },
    ],
  };
  const found = omegas(rod, [], 3);
  expect(found[0]).toBeGreaterThan(omegas(uniform, [], 1)[0]);
  expect(found[2]).toBeGreaterThan(found[1]);
});

test('doubling the elements changes a tapered rod by less than 1e-8', () => {
  const request = { rod: taperedRod(4, 0.1, 1, 2, 40), masses: [{ fromTipM: 0.31, massKg: 0.02 }], modes: 4 };
  const coarse = frequency(request);
  const fine = frequency(request, { ...frequencyDefaults, resolution: 128 });
  if (coarse.status !== 'converged' || fine.status !== 'converged') throw new Error('not converged');
  coarse.hz.forEach((hz, k) => {
    expect(Math.abs(hz / fine.hz[k] - 1)).toBeLessThan(1e-8);
  });
});

test('four times the stiffness doubles every frequency; mass anywhere lowers every one', () => {
  const random = seededRandom(20);
  for (let trial = 0; trial < 20; trial++) {
    const rod = taperedRod(3 + random(), 0.1 + 0.8 * random(), 1, 1.5, 60);
    const masses = Array.from({ length: 6 }, () => ({ fromTipM: random(), massKg: 0.02 * random() }));
    const stiffer = { ...rod, stiffness: rod.stiffness.map((row) => ({ ...row, EINm2: 4 * row.EINm2 })) };
    const found = omegas(rod, masses, 3);
    omegas(stiffer, masses, 3).forEach((omega, k) => {
      expect(omega / found[k]).toBeCloseTo(2, 9);
    });
    omegas(rod, [...masses, { fromTipM: 0.9 * random(), massKg: 0.05 }], 3).forEach((omega, k) => {
      expect(omega).toBeLessThanOrEqual(found[k] * (1 + 1e-9));
    });
  }
});

test('what makes no sense is refused by name, and the request is left as it was', () => {
  const massless: Rod = { lengthM: 1, stiffness: [{ fromTipM: 0, EINm2: 1 }] };
  const refusal = (rod: Rod, masses: PointMass[], modes: number) => {
    const request = { rod, masses, modes };
    const before = JSON.stringify(request);
    const answer = frequency(request);
    expect(JSON.stringify(request)).toBe(before);
    return answer.status === 'refused' ? answer.findings[0] : answer;
  };
  expect(refusal(massless, [], 1)).toMatchObject({ path: 'rod.massPerLength' });
  expect(refusal(massless, [{ fromTipM: 1, massKg: 1 }], 1)).toMatchObject({ path: 'rod.massPerLength' });
  expect(refusal(massless, [{ fromTipM: 0, massKg: 1 }], 2)).toMatchObject({ path: 'modes' });
  expect(refusal(uniform, [], 0)).toMatchObject({ path: 'modes' });
  expect(refusal(uniform, [], 2.5)).toMatchObject({ path: 'modes' });
});

test('a frequency lost in rounding is named, the sound ones still given', () => {
  const rod: Rod = { lengthM: 1, stiffness: [{ fromTipM: 0, EINm2: 1 }] };
  const masses = [
    { fromTipM: 0, massKg: 1 },
    { fromTipM: 0.9999, massKg: 1e-3 },
  ];
  const answer = frequency({ rod, masses, modes: 2 });
  expect(answer).toMatchObject({ status: 'not-converged', reason: { values: { mode: 2 } } });
  if (answer.status === 'not-converged') expect(answer.hz[0]).toBeCloseTo(Math.sqrt(3) / (2 * Math.PI), 6);
});

test('the same request gives the same bits', () => {
  const request = { rod: taperedRod(4, 0.3, 1, 2, 50), modes: 3 };
  expect(frequency(request)).toEqual(frequency(request));
});

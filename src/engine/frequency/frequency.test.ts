import { expect, test } from 'vitest';
import { type CheckRow, checkRowsOf } from '../../../reference/check-values.ts';
import { type SyntheticBlankName, syntheticBlank } from '../../../reference/synthetic-blank.ts';
import type { PointMass } from '../bend/mesh.ts';
import type { Rod } from '../bend/rod.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import { frequency, frequencyDefaults } from './frequency.ts';

const uniform: Rod = {
  lengthM: 1,
  stiffness: [{ fromTipM: 0, EINm2: 1 }],
  massPerLength: [{ fromTipM: 0, kgPerM: 1 }],
};

/** Linear diameter from `ratio` at the tip to 1; EI ~ d^power, mass ~ d^(power - 2). */
function tapered(power: number, ratio: number, rows = 2000): Rod {
  const stations = Array.from({ length: rows + 1 }, (_, i) => i / rows);
  const diameter = (at: number) => Math.max(ratio + (1 - ratio) * at, 1e-9);
  return {
    lengthM: 1,
    stiffness: stations.map((at) => ({ fromTipM: at, EINm2: diameter(at) ** power })),
    massPerLength: stations.map((at) => ({ fromTipM: at, kgPerM: diameter(at) ** (power - 2) })),
  };
}

/** ω of each mode, or a failure that shows the answer. */
function omegas(rod: Rod, masses: PointMass[], modes: number): number[] {
  const answer = frequency({ rod, masses, modes });
  if (answer.status !== 'converged') throw new Error(JSON.stringify(answer));
  return answer.hz.map((hz) => 2 * Math.PI * hz);
}

function expectRow(row: CheckRow, ours: number, relative: number): void {
  expect(Math.abs(ours / (row.value as number) - 1), `${row.id}: ${ours} against ${row.value}`).toBeLessThan(
    relative,
  );
}
const modeOf = (row: CheckRow) => (row.inputs.mode as number) - 1;

test('a uniform rod has the published frequencies', () => {
  const found = omegas(uniform, [], 5);
  for (const row of checkRowsOf('freq.uniform.lambda')) expectRow(row, found[modeOf(row)], 1e-7);
});

test('a uniform rod with a tip mass has the published frequencies', () => {
  for (const row of checkRowsOf('freq.tipmass')) {
    const found = omegas(uniform, [{ fromTipM: 0, massKg: row.inputs.mu as number }], 3);
    expectRow(row, Math.sqrt(found[modeOf(row)]), 1e-8);
  }
});

test.each([
  ['freq.cone.lambda', 4],
  ['freq.wedge.lambda', 3],
])('complete taper %s has the published frequencies', (start, power) => {
  const found = omegas(tapered(power, 0), [], 3);
  for (const row of checkRowsOf(start)) expectRow(row, found[modeOf(row)], 1e-5);
});

test.each([
  ['freq.trunc.cone', 4],
  ['freq.trunc.wedge_or_thin_tube', 3],
])('cut-off taper %s, with and without tip mass, has the published frequencies', (start, power) => {
  for (const row of checkRowsOf(start)) {
    const ratio = row.inputs.d_tip_over_d_butt as number;
    const rod = tapered(power, ratio, 800);
    const share = power === 4 ? (1 + ratio + ratio ** 2) / 3 : (1 + ratio) / 2;
    const mu = (row.inputs.mu as number | undefined) ?? 0;
    const masses = mu > 0 ? [{ fromTipM: 0, massKg: mu * share }] : [];
    expectRow(row, omegas(rod, masses, 3)[modeOf(row)], 1e-5);
  }
});

test('tapers agree with a printed table', () => {
  for (const shape of ['wedge', 'cone'] as const) {
    for (const row of checkRowsOf(`lit.ijmme2015.${shape}`)) {
      const found = omegas(
        tapered(shape === 'cone' ? 4 : 3, row.inputs.d_tip_over_d_butt as number, 800),
        [],
        3,
      );
      // its modes 2 and 3 are the table's own approximations, good to 6e-4
      const printed = row.value as number[];
      expect(Math.abs(found[0] / printed[0] - 1)).toBeLessThan(5e-6);
      for (const k of [1, 2]) expect(Math.abs(found[k] / printed[k] - 1)).toBeLessThan(6e-4);
    }
  }
});

test.each(['SYN-FLY9', 'SYN-GLASS6'] as SyntheticBlankName[])('%s, bare and with hardware', (name) => {
  const { rod, lengthM } = syntheticBlank(name);
  const bare = omegas(rod, [], 3);
  for (const mode of [1, 2, 3])
    expectRow(checkRowsOf(`blank.${name}.f${mode}`)[0], bare[mode - 1] / (2 * Math.PI), 1e-6);
  for (const row of checkRowsOf(`blank.${name}.f1.`)) {
    const points = (row.inputs.points as [number, number][] | undefined) ?? [];
    const masses = points.map(([fromButtM, massKg]) => ({ fromTipM: lengthM - fromButtM, massKg }));
    masses.push({ fromTipM: 0, massKg: row.inputs.tip_kg as number });
    expectRow(row, omegas(rod, masses, 1)[0] / (2 * Math.PI), 1e-6);
  }
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
  const request = { rod: tapered(4, 0.1, 40), masses: [{ fromTipM: 0.31, massKg: 0.02 }], modes: 4 };
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
    const rod = tapered(3 + random(), 0.1 + 0.8 * random(), 60);
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
  expect(answer).toMatchObject({ status: 'not-converged', reason: expect.stringContaining('frequency 2') });
  if (answer.status === 'not-converged') expect(answer.hz[0]).toBeCloseTo(Math.sqrt(3) / (2 * Math.PI), 6);
});

test('the same request gives the same bits', () => {
  const request = { rod: tapered(4, 0.3, 50), modes: 3 };
  expect(frequency(request)).toEqual(frequency(request));
});

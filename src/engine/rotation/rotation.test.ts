import { expect, test } from 'vitest';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import type { RotationRequest, RotationSolved } from './request.ts';
import { rotation } from './rotation.ts';

interface Section {
  firstM: number;
  differenceM: number;
  c: number;
  softRad: number;
  bowM: number;
  bowRad: number;
}

/** The model of the door's definition, written out on its own. */
function readings(section: Section, turns: readonly number[], sigmaM: number, seed: number): RotationRequest {
  const normal = seededNormal(seededRandom(seed));
  const { firstM, differenceM, c, softRad, bowM, bowRad } = section;
  return {
    loadsKg: [0.1, 0.3],
    sigmaM: Math.max(sigmaM, 1e-5),
    readings: turns.map((turnRad) => {
      const stiffness = 1 + c * Math.cos(2 * (turnRad - softRad));
      const a = firstM * stiffness + bowM * Math.cos(turnRad - bowRad);
      const b = a + differenceM * stiffness;
      return { turnRad, dropsM: [a + sigmaM * normal(), b + sigmaM * normal()] };
    }),
  };
}

const eighths = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4);
const halfTurn = eighths.slice(0, 4);
const bowed: Section = { firstM: 0.02, differenceM: 0.04, c: 0.03, softRad: 2.2, bowM: 0.004, bowRad: -1.3 };

test.each([
  { over: 'a whole turn', turns: eighths, said: [] },
  {
    over: 'half a turn',
    turns: halfTurn,
    said: [{ code: 'rotation/circle-uncovered', values: { quantity: 'bow' } }],
  },
])('exact readings over $over give bow and stiffness back', ({ turns, said }) => {
  const answer = rotation(readings(bowed, turns, 0, 1)) as RotationSolved;
  expect(answer.status).toBe('converged');
  expect(answer.bow.amplitudeM).toBeCloseTo(0.004, 9);
  expect(answer.bow.directionRad).toBeCloseTo(-1.3, 7);
  expect(answer.stiffnessDifference.fraction).toBeCloseTo(0.06, 8);
  expect(answer.stiffnessDifference.softRad).toBeCloseTo(2.2, 7);
  expect(answer.significant).toEqual({ bow: true, stiffness: true });
  expect(answer.findings).toMatchObject(said);
});

test('turning the reference mark turns both directions with it', () => {
  const shift = 0.4;
  const turned = { ...bowed, softRad: bowed.softRad + shift, bowRad: bowed.bowRad + shift };
  const a = rotation(readings(bowed, eighths, 1e-4, 5)) as RotationSolved;
  const b = rotation(
    readings(
      turned,
      eighths.map((turn) => turn + shift),
      1e-4,
      5,
    ),
  ) as RotationSolved;
  expect(b.bow.directionRad - a.bow.directionRad).toBeCloseTo(shift, 8);
  expect(b.stiffnessDifference.softRad - a.stiffnessDifference.softRad).toBeCloseTo(shift, 8);
});

test('stated uncertainties are those of repeated readings', () => {
  const answers = Array.from({ length: 400 }, (_, k) => rotation(readings(bowed, eighths, 2e-4, 10 + k)));
  const solved = answers as RotationSolved[];
  const spread = (values: number[]) => {
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
  };
  const bow = spread(solved.map((answer) => answer.bow.amplitudeM)) / solved[0].bow.sigmaM;
  const stiffness =
    spread(solved.map((answer) => answer.stiffnessDifference.fraction)) / solved[0].stiffnessDifference.sigma;
  for (const ratio of [bow, stiffness]) {
    expect(ratio).toBeGreaterThan(0.8);
    expect(ratio).toBeLessThan(1.2);
  }
});

test('a straight, even section is called bowed or uneven about once in a hundred', () => {
  const even: Section = { ...bowed, c: 0, bowM: 0 };
  const solved = Array.from({ length: 1000 }, (_, k) =>
    rotation(readings(even, eighths, 3e-4, 5000 + k)),
  ) as RotationSolved[];
  const bow = solved.filter(({ significant }) => significant.bow).length;
  const stiffness = solved.filter(({ significant }) => significant.stiffness).length;
  for (const count of [bow, stiffness]) {
    expect(count).toBeGreaterThan(0);
    expect(count).toBeLessThan(25);
  }
});

test('a dial read wrongly is named, left out, and moves nothing', () => {
  const clean = readings(bowed, eighths, 1e-4, 3);
  const spoilt = clean.readings.map((reading, i) =>
    i === 5 ? { ...reading, dropsM: [reading.dropsM[0], reading.dropsM[1] + 0.002] as const } : reading,
  );
  const answer = rotation({ ...clean, readings: spoilt }) as RotationSolved;
  expect(answer.findings.map(({ path }) => path)).toEqual(['readings[5].dropsM[1]']);
  expect(answer.bow.amplitudeM).toBeCloseTo(0.004, 3);
});

test.each([
  {
    name: 'two directions',
    change: { readings: readings(bowed, [0, Math.PI, 1.5], 0, 1).readings },
    path: 'readings',
  },
  { name: 'equal loads', change: { loadsKg: [0.1, 0.1] as [number, number] }, path: 'loadsKg' },
  { name: 'no ±', change: { sigmaM: 0 }, path: 'sigmaM' },
  { name: 'nothing read', change: { readings: [] }, path: 'readings' },
])('$name: refused at its field', ({ change, path }) => {
  const answer = rotation({ ...readings(bowed, eighths, 0, 1), ...change });
  expect(answer.status).toBe('refused');
  expect(answer.findings[0].path).toBe(path);
});

test('turns in a bunch are told so', () => {
  const answer = rotation(readings(bowed, [0, 0.2, 0.4, 0.6], 1e-5, 1));
  expect(answer.findings.map(({ code }) => code)).toContain('rotation/circle-uncovered');
});

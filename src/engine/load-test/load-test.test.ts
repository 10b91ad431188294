import { expect, test } from 'vitest';
import { nineFootFive, smoothRod } from '../../../test/rods/invented-rods.ts';
import { bend } from '../bend/bend.ts';
import { hungBefore, judgeProof, pencilM } from './judge-proof.ts';
import { commonFlags, predictPlaces } from './predict-places.ts';

const rod = smoothRod(nineFootFive);
const tables = { stiffness: rod.stiffness, massPerLength: rod.massPerLength! };
const request = {
  tables,
  freeLengthM: rod.lengthM,
  buttAngleRad: Math.PI / 4,
  hungKg: 0.15,
  flagsFromTipM: commonFlags(rod.lengthM),
};
/** Blanks as stiff everywhere as this one by ±`share`, in even steps. */
const blanksWithin = (share: number) =>
  Array.from({ length: 41 }, (_, i) => softer(1 + share * (i / 20 - 1)));
const softer = (factor: number) => ({
  ...tables,
  stiffness: rod.stiffness.map((row) => ({ ...row, EINm2: row.EINm2 * factor })),
});

function placesOf(more: Partial<Parameters<typeof predictPlaces>[0]> = {}) {
  const answer = predictPlaces({ ...request, ...more });
  if (answer.status !== 'predicted') throw new Error(answer.reason?.code);
  return answer.places;
}

test('a short stiff cantilever drops by F L³ / 3 EI (Euler and Bernoulli)', () => {
  const stiff = {
    stiffness: [0, 1].map((fromTipM) => ({ fromTipM, EINm2: 100 })),
    massPerLength: [0, 1].map((fromTipM) => ({ fromTipM, kgPerM: 0 })),
  };
  const [tip, middle] = placesOf({
    tables: stiff,
    freeLengthM: 1,
    buttAngleRad: 0,
    hungKg: 1 / 9.80665,
    flagsFromTipM: [0.5],
  });
  expect(tip.upM).toBeCloseTo(-1 / 300, 6);
  // F x² (3 L − x) / 6 EI at x = L/2.
  expect(middle.upM).toBeCloseTo(-(0.25 * 2.5) / 600, 6);
});

test('tip and flags stand on the bend, and more different blanks reach farther', () => {
  const places = placesOf({ blanksThatFit: blanksWithin(0.05) });
  const fine = bend(
    {
      rod,
      buttAngleRad: request.buttAngleRad,
      load: { tip: { xN: 0, yN: -0.15 * 9.80665 } },
    },
    { resolution: 1500 },
  );
  places.forEach(({ fromTipM, outM, upM }) => {
    const away = fine.points.map((p) => Math.hypot(p.xM - outM, p.yM - upM));
    const nearest = fine.points[away.indexOf(Math.min(...away))];
    expect(Math.min(...away)).toBeLessThan(0.0015);
    expect(Math.abs(nearest.fromTipM - fromTipM)).toBeLessThan(0.003);
  });
  const wider = placesOf({ blanksThatFit: blanksWithin(0.1) });
  wider.forEach(({ reach }, i) => {
    expect(reach!.upM).toBeGreaterThan(places[i].reach!.upM);
  });
  expect(placesOf()[0].reach).toBeUndefined();
});

test('blanks that drop alike leave a short reach, however their stiffness differs along them', () => {
  // stiffer toward the tip and softer toward the butt: what one weight read at the tip cannot tell apart
  const tilted = (share: number) => ({
    ...tables,
    stiffness: rod.stiffness.map(({ fromTipM, EINm2 }) => ({
      fromTipM,
      EINm2: EINm2 * (1 + share * (1 - (2 * fromTipM) / rod.lengthM)),
    })),
  });
  const [tip] = placesOf({ blanksThatFit: [-0.2, -0.1, 0, 0.1, 0.2].map(tilted) });
  const [edge] = placesOf({ blanksThatFit: [0.8, 0.9, 1, 1.1, 1.2].map(softer) });
  expect(tip.reach!.upM).toBeLessThan(0.5 * edge.reach!.upM);
});

test('a blank like those that fit agrees; one far softer is off and hangs lower', () => {
  const predicted = placesOf({ blanksThatFit: blanksWithin(0.05) });
  const seenOf = (factor: number) => placesOf({ tables: softer(factor) });
  const near = judgeProof(predicted, seenOf(0.97));
  expect(near).toMatchObject({ counted: 4, agreed: 4, tip: undefined });
  expect(near.worst).toBeLessThan(1);
  const soft = judgeProof(predicted, seenOf(0.75));
  expect(soft.agreed).toBeLessThan(4);
  expect(soft).toMatchObject({ tip: 'lower' });
  expect(judgeProof(predicted, seenOf(1.3)).tip).toBe('higher');
});

test('without blanks that fit nothing is called right or wrong, and a half-read place does not count', () => {
  const predicted = placesOf();
  const verdict = judgeProof(predicted, [predicted[0], { upM: 1 }, {}, {}]);
  expect(verdict.places.map((place) => place.verdict)).toEqual([
    'no-measure',
    'not-seen',
    'not-seen',
    'not-seen',
  ]);
  expect(verdict.counted).toBe(0);
});

test('the pencil alone is allowed where the reach is nothing', () => {
  const place = { fromTipM: 0, outM: 1, upM: 1, reach: { outM: 0, upM: 0 } };
  const at = (upM: number) => judgeProof([place], [{ outM: 1, upM }]).places[0].verdict;
  expect(at(1 + 0.99 * pencilM)).toBe('agrees');
  expect(at(1 + 1.01 * pencilM)).toBe('off');
});

test('a weight within 2 % of one that was hung proves nothing new', () => {
  expect(hungBefore(0.1, [0, 0.05, 0.1015])).toBe(0.1015);
  expect(hungBefore(0.1, [0, 0.05, 0.103])).toBeUndefined();
});

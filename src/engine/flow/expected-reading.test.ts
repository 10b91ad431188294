import { expect, test } from 'vitest';
import type { ClampSetup } from '../bench/bench.ts';
import { axisDrops } from '../bench/edge.ts';
import { expectedShape, type HeldBlank, shapeAt } from './expected-reading.ts';

const held: HeldBlank = {
  tables: {
    stiffness: [{ fromTipM: 0, EINm2: 1 }],
    massPerLength: [{ fromTipM: 0, kgPerM: 0 }],
  },
  profile: [
    { fromTipM: 0, outsideM: 0.004 },
    { fromTipM: 1, outsideM: 0.01 },
  ],
  clampFromTipM: 1,
  nominalAngleRad: 0,
  massKg: 0.02,
  edge: 'axis',
};
const flags = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

function dropsOf(blank: HeldBlank): number[] {
  const shape = expectedShape(blank);
  if (!shape) throw new Error('no bend');
  return flags.map((at) => shapeAt(shape, at).readM);
}

test('a light weight drops the tip by PL³/3EI', () => {
  const [tip] = dropsOf({ ...held, massKg: 0.002 });
  expect(tip).toBeCloseTo((0.002 * 9.80665) / 3, 4);
});

test('the shape is as long as the blank, at the flags as at the tip', () => {
  for (const nominalAngleRad of [0, 0.4]) {
    const shape = expectedShape({ ...held, nominalAngleRad }) ?? [];
    const places = [...flags, 1].map((at) => shapeAt(shape, at));
    const lengthM = places
      .slice(1)
      .reduce((sum, p, i) => sum + Math.hypot(p.alongM - places[i].alongM, p.dropM - places[i].dropM), 0);
    expect(places[0].dropM).toBeGreaterThan(0.05);
    expect(lengthM).toBeCloseTo(1, 3);
  }
});

test('a clamp that points up lifts the tip by the tilt', () => {
  const [level] = dropsOf({ ...held, massKg: 0 });
  const [tilted] = dropsOf({ ...held, massKg: 0, tiltRad: 0.01 });
  expect(level - tilted).toBeCloseTo(Math.sin(0.01), 5);
});

test.each(['upper', 'lower'] as const)('a drop read at the %s edge leads back to the axis', (edge) => {
  const readings = dropsOf({ ...held, edge }).map((dropM, i) => ({ id: `${i}`, fromTipM: flags[i], dropM }));
  const setup = { clampFromTipM: 1, edge } as ClampSetup;
  const axis = dropsOf(held);
  const back = axisDrops(setup, readings, held.profile);
  for (const [i, { dropM }] of back.entries()) expect(dropM).toBeCloseTo(axis[i], 4);
});

import { describe, expect, it, test } from 'vitest';
import { checkRowsOf } from '../../../reference/check-values.ts';
import { placeArbors } from './arbors.ts';
import { balanceOf, taperedTubeCentreM } from './balance.ts';
import { handleDefaults } from './handle-parts.ts';
import { type HandleBlank, planHandle } from './plan-handle.ts';
import { reamingSteps } from './reaming.ts';
import { chooseTipTube, tipTubeBoreM } from './tip-tube.ts';
import { chooseWindingCheck } from './winding-check.ts';

const blank: HandleBlank = {
  lengthM: 2.7,
  buttSectionM: 0.7,
  profile: [
    { fromTipM: 0, outsideM: 0.00166 },
    { fromTipM: 2.7, outsideM: 0.0094 },
  ],
};
const parts = {
  gripFrontM: 0.265,
  gripLengthM: 0.17,
  gripBoreM: 0.0064,
  seatLengthM: 0.09,
  seatBoreM: 0.0105,
  ...handleDefaults,
};
const pathsOf = (change: object) =>
  planHandle({ ...parts, ...change }, blank)?.findings.map(({ path, severity }) => `${severity} ${path}`);

test('a tube of k/64 in has a bore of k × 25.4/64 mm, half sizes too', () => {
  for (const { inputs, value } of checkRowsOf('tiptube.')) {
    const mm = (value as number[])[1];
    expect(Math.abs(tipTubeBoreM(inputs.k as number) * 1000 - mm)).toBeLessThan(1e-6);
  }
});

describe('the tip-top', () => {
  it('is the smallest half size that goes on, its neighbours beside it', () => {
    for (let micron = 1200; micron < 3000; micron += 7) {
      const { best, neighbours } = chooseTipTube(micron * 1e-6);
      expect(best.clearanceM).toBeGreaterThanOrEqual(-1e-9);
      expect(neighbours[0].clearanceM).toBeLessThan(0);
      expect([neighbours[0].size64, neighbours[1].size64]).toEqual([best.size64 - 0.5, best.size64 + 0.5]);
    }
  });
  it('calls a tube without room for glue tight, one that rattles loose', () => {
    expect(chooseTipTube(4.5 * 0.396875e-3 - 0.00001e-3 * 1000).fit).toBe('tight');
    expect(chooseTipTube(1.66e-3).fit).toBe('loose');
    expect(chooseTipTube(1.72e-3).fit).toBe('good');
  });
});

test('each width is opened exactly to where blank and glue have narrowed to it', () => {
  const grip = { fromM: 0.095, toM: 0.265 };
  const outsideM = (x: number) => 0.0094 - x * 0.006;
  const steps = reamingSteps({ grip, gripBoreM: 0.0064, glueLineM: 0.0002, reamShortM: 0.008, outsideM });
  expect(steps.length).toBeGreaterThan(2);
  for (const { widthM, depthM } of steps.slice(1, -1)) {
    expect(outsideM(grip.fromM + depthM) + 0.0004).toBeCloseTo(widthM, 9);
  }
  expect(steps[0].depthM).toBeCloseTo(0.17, 12);
  expect(steps[0].widthM).toBeCloseTo(outsideM(grip.toM) + 0.0004, 12);
  expect(steps.at(-1)?.widthM).toBeCloseTo(outsideM(grip.fromM) + 0.0004, 12);
});

test('nothing is reamed from a bore that is wide enough already', () => {
  const job = { grip: { fromM: 0.1, toM: 0.2 }, gripBoreM: 0.012, glueLineM: 0.0002, reamShortM: 0.008 };
  expect(reamingSteps({ ...job, outsideM: () => 0.009 })).toEqual([]);
});

test('arbors leave glue at both ends and between them, and fill half of bore less blank', () => {
  const bands = placeArbors(
    { arborCount: 4, arborWidthM: 0.01, arborShortM: 0.005, seatBoreM: 0.0105 },
    { fromM: 0.005, toM: 0.095 },
    (x) => 0.0094 - x * 0.003,
  );
  expect(bands).toHaveLength(4);
  expect(bands[0].fromM - 0.005).toBeCloseTo(0.005, 12);
  expect(0.095 - bands[3].toM).toBeCloseTo(0.005, 12);
  for (const [index, band] of bands.entries()) {
    expect(2 * band.gapM + band.outsideM).toBeCloseTo(0.0105, 12);
    if (index > 0) expect(band.fromM - bands[index - 1].toM).toBeGreaterThan(0.004);
  }
  expect(
    placeArbors(
      { arborCount: 9, arborWidthM: 0.01, arborShortM: 0.005, seatBoreM: 0.0105 },
      { fromM: 0, toM: 0.03 },
      () => 0.009,
    ),
  ).toHaveLength(1);
});

test('a fighting butt makes the rod longer by what stands out', () => {
  expect(planHandle({ ...parts, fightingButtM: 0.04 }, blank)?.rodLengthM).toBeCloseTo(2.74, 12);
  expect(planHandle(parts, { ...blank, profile: [] })).toBeUndefined();
});

describe('what cannot go on the blank is named at its field', () => {
  it.each([
    [{ gripLengthM: 0.3 }, ['stop handle/-/gripLength']],
    [{ gripFrontM: 0.2, gripLengthM: 0.17 }, ['stop handle/-/seatLength']],
    [{ gripFrontM: 0.75 }, ['stop handle/-/gripFront']],
    [{ seatBoreM: 0.008 }, ['stop handle/-/seatBore']],
    [{ seatBoreM: 0.016 }, ['doubt handle/-/seatBore']],
    [{ gripBoreM: 0.012 }, ['doubt handle/-/gripBore']],
    [{ reachM: 0.2 }, ['stop handle/-/reach']],
    [{}, []],
  ])('%j', (change, found) => {
    expect(pathsOf(change)).toEqual(found);
  });
});

test('the balance point holds the moments of all parts', () => {
  const list = [
    { name: 'reel', massKg: 0.12, fromButtM: 0.05 },
    { name: 'blank', massKg: 0.04, fromButtM: 0.95 },
  ];
  const { fromButtM = 0, massKg } = balanceOf(list);
  expect(massKg).toBeCloseTo(0.16, 12);
  expect(list.reduce((sum, { massKg: m, fromButtM: x }) => sum + m * (x - fromButtM), 0)).toBeCloseTo(0, 12);
  expect(balanceOf([]).fromButtM).toBeUndefined();
});

test('the centre of a tapered tube is that of many thin rings', () => {
  const [length, thick, thin, rings] = [1.2, 0.008, 0.002, 20_000];
  let [mass, moment] = [0, 0];
  for (let ring = 0; ring < rings; ring++) {
    const x = ((ring + 0.5) / rings) * length;
    const d = thick + ((thin - thick) * x) / length;
    mass += d;
    moment += d * x;
  }
  expect(taperedTubeCentreM(length, thick, thin)).toBeCloseTo(moment / mass, 7);
});

test('a check of a size past the bore sought says by how much', () => {
  // 7.00 mm of blank: bore 7.10 to 7.30 mm; 18/64 in is 7.14 mm, the half millimetre above 7.10 is 7.5 mm.
  expect(chooseWindingCheck(0.007)).toMatchObject({ size64: 18, halfMillimetres: 7.5 });
  expect(chooseWindingCheck(0.00933)).toMatchObject({ size64: 24, halfMillimetres: 9.5 });
});

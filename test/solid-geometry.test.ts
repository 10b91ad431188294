/**
 * Our closed forms of solids against a general library of solid geometry (@jscad/modeling: meshes and booleans).
 * Every round solid is an inscribed prism of n sides there, so that its volume lies below ours by a share that falls
 * with the square of n; halving the sides' length must quarter the difference, and the limit must be ours.
 */
import { booleans, extrusions, maths, measurements, primitives } from '@jscad/modeling';
import { describe, expect, it, test } from 'vitest';
import reference from '../reference/thread-values.json' with { type: 'json' };
import { coatVolumeM3, hollowCylinderM3 } from '../src/engine/finish/coat-volume.ts';
import { placeArbors } from '../src/engine/handle/arbors.ts';
import { taperedTubeCentreM } from '../src/engine/handle/balance.ts';
import { reamingSteps } from '../src/engine/handle/reaming.ts';
import { closeWrap } from '../src/engine/wraps/thread.ts';

type Solid = ReturnType<typeof primitives.cylinder>;
const volume = (solid: Solid) => measurements.measureVolume(solid);

/** From z = 0 upwards; millimetres. */
function cone(bottomMm: number, topMm: number, heightMm: number, segments: number): Solid {
  return primitives.cylinderElliptic({
    startRadius: [bottomMm / 2, bottomMm / 2],
    endRadius: [topMm / 2, topMm / 2],
    height: heightMm,
    center: [0, 0, heightMm / 2],
    segments,
  });
}
const rod = (diameterMm: number, heightMm: number, segments: number) =>
  cone(diameterMm, diameterMm, heightMm, segments);

/** What a mesh of n, 2n and 4n sides goes to, and the order it does so with. */
function limitOf(meshed: (segments: number) => number, segments = 16) {
  const [coarse, fine, finer] = [segments, 2 * segments, 4 * segments].map(meshed);
  return { limit: finer + (finer - fine) / 3, order: Math.log2((fine - coarse) / (finer - fine)) };
}
function expectLimit(ours: number, meshed: (segments: number) => number, segments?: number): void {
  const { limit, order } = limitOf(meshed, segments);
  expect(Math.abs(order - 2)).toBeLessThan(0.02);
  expect(Math.abs(limit / ours - 1)).toBeLessThan(2e-5);
}

describe('a coat of finish', () => {
  it('is the wall between two cylinders', () => {
    for (const [insideMm, wallMm, lengthMm] of [
      [1.9, 0.25, 10],
      [9.4, 0.4, 22],
    ]) {
      expectLimit(1e9 * hollowCylinderM3(insideMm / 1000, wallMm / 1000, lengthMm / 1000), (n) =>
        volume(booleans.subtract(rod(insideMm + 2 * wallMm, lengthMm, n), rod(insideMm, lengthMm, n))),
      );
    }
  });
  it('on a tapered blank is that of its middle: the wall between two cones', () => {
    const [thickMm, thinMm, wrapMm, laidMm, coatMm] = [5.2, 4.6, 14, 0.154, 0.25];
    const wrap = { fromTipM: 0, toTipM: wrapMm / 1000, outsideM: (thickMm + thinMm) / 2000, overFoot: false };
    const ours = coatVolumeM3({
      wraps: [wrap],
      laidWidthM: laidMm / 1000,
      thicknessM: coatMm / 1000,
      first: false,
    });
    const grown = (by: number, n: number) => cone(thickMm + 2 * by, thinMm + 2 * by, wrapMm, n);
    expectLimit(1e9 * ours, (n) => volume(booleans.subtract(grown(laidMm + coatMm, n), grown(laidMm, n))));
  });
  it('soaks into the room that round turns leave of square ones, and fills a triangle on either side of a foot', () => {
    const [outsideMm, laidMm, wrapMm, footMm] = [3.2, 0.3, 9, 0.8];
    const wrap = { fromTipM: 0, toTipM: wrapMm / 1000, outsideM: outsideMm / 1000, overFoot: true };
    const of = (first: boolean) =>
      1e9 *
      coatVolumeM3({
        wraps: [wrap],
        laidWidthM: laidMm / 1000,
        thicknessM: 0.00025,
        footHeightM: footMm / 1000,
        first,
      });
    const side = primitives.polygon({
      points: [
        [0, 0],
        [footMm, 0],
        [0, footMm],
      ],
    });
    const fillet = 2 * volume(extrusions.extrudeLinear({ height: wrapMm }, side) as Solid);

    expectLimit(
      of(true) - of(false) - fillet,
      (n) => {
        const ring = volume(
          booleans.subtract(rod(outsideMm + 2 * laidMm, laidMm, n), rod(outsideMm, laidMm, n)),
        );
        const turn = primitives.torus({
          innerRadius: laidMm / 2,
          outerRadius: (outsideMm + laidMm) / 2,
          innerSegments: n,
          outerSegments: n,
        });
        return (wrapMm / laidMm) * (ring - volume(turn));
      },
      32,
    );
  });
});

test('a tapered tube balances where the solid’s centre of mass is', () => {
  const [thickMm, thinMm, wallMm, lengthMm] = [9.2, 3.4, 0.6, 720];
  const tube = booleans.subtract(
    cone(thickMm, thinMm, lengthMm, 48),
    cone(thickMm - 2 * wallMm, thinMm - 2 * wallMm, lengthMm, 48),
  );
  // Sides of an even wall: the mass per length goes with the diameter of the wall's middle.
  const ours = taperedTubeCentreM(lengthMm / 1000, (thickMm - wallMm) / 1000, (thinMm - wallMm) / 1000);
  expect(measurements.measureCenterOfMass(tube)[2]).toBeCloseTo(1000 * ours, 3);
});

describe('a grip of cork reamed in steps', () => {
  const [gripMm, buttMm, frontMm, glueMm, boreMm] = [165, 9.6, 9.05, 0.2, 6.4];
  const outsideM = (x: number) => (buttMm + ((frontMm - buttMm) * x * 1000) / gripMm) / 1000;
  const steps = reamingSteps({
    grip: { fromM: 0, toM: gripMm / 1000 },
    gripBoreM: boreMm / 1000,
    glueLineM: glueMm / 1000,
    reamShortM: 0.008,
    outsideM,
  });
  const segments = 64;
  const wanted = cone(buttMm + 2 * glueMm, frontMm + 2 * glueMm, gripMm, segments);
  const reamed = steps
    .filter(({ depthM }) => depthM > 0)
    .map(({ widthM, depthM }) => rod(1000 * widthM, 1000 * depthM, segments));
  it('is never opened further than blank and glue take', () => {
    expect(reamed.length).toBeGreaterThan(2);
    for (const bore of reamed) {
      expect(volume(booleans.subtract(bore, wanted))).toBeLessThan(1e-6 * volume(bore));
    }
  });
  it('is left with a step of at most a quarter of a millimetre to ease by hand', () => {
    const cork = rod(26, gripMm, segments);
    const bored = booleans.subtract(cork, ...reamed);
    const left = volume(bored) - volume(booleans.subtract(cork, wanted));
    expect(left).toBeGreaterThan(0);
    // A wall of half a step all along and all round.
    expect(left).toBeLessThan(Math.PI * buttMm * 0.125 * gripMm);
  });
});

test('an arbor is the ring between the seat’s bore and the tapered blank', () => {
  const seat = { fromM: 0.01, toM: 0.1 };
  const [boreMm, perM] = [10.8, 3.2];
  const outsideMm = (x: number) => 9.7 - perM * x;
  const choices = { arborCount: 3, arborWidthM: 0.012, arborShortM: 0.005, seatBoreM: boreMm / 1000 };
  const bands = placeArbors(choices, seat, (x) => outsideMm(x) / 1000);
  expect(bands).toHaveLength(3);
  for (const { fromM, toM, gapM, outsideM } of bands) {
    const widthMm = 1000 * (toM - fromM);
    const ours = 1e9 * hollowCylinderM3(outsideM, gapM, toM - fromM);
    expectLimit(ours, (n) => {
      const blank = cone(outsideMm(fromM), outsideMm(toM), widthMm, n);
      return volume(booleans.subtract(rod(boreMm, widthMm, n), blank));
    });
  }
});

describe('a thread’s helix', () => {
  const rows = reference.rows.filter(({ id }) => id.startsWith('helix.'));
  it.each(rows)('$id has the length that numerical quadrature of the curve gives', ({ inputs, value }) => {
    const { OD_mm, thread_mm, width_mm } = inputs as Record<string, number>;
    const { threadM } = closeWrap(OD_mm / 1000, width_mm / 1000, thread_mm / 1000);
    expect(1000 * threadM).toBeCloseTo(value[0], 6);
  });
  it('is what its polygon of more and more corners goes to', () => {
    expect(rows.length).toBeGreaterThan(2);
    const [underMm, laidMm, widthMm] = [4.2, 0.25, 2];
    const turns = widthMm / laidMm;
    const corner = (angle: number) =>
      maths.vec3.fromValues(
        ((underMm + laidMm) / 2) * Math.cos(angle),
        ((underMm + laidMm) / 2) * Math.sin(angle),
        (laidMm * angle) / (2 * Math.PI),
      );
    expectLimit(1000 * closeWrap(underMm / 1000, widthMm / 1000, laidMm / 1000).threadM, (n) =>
      Array.from({ length: n * turns }, (_, k) =>
        maths.vec3.distance(corner((2 * Math.PI * k) / n), corner((2 * Math.PI * (k + 1)) / n)),
      ).reduce((sum, length) => sum + length, 0),
    );
  });
});

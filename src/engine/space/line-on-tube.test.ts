import { describe, expect, test } from 'vitest';
import { seededRandom } from '../numerics/seeded-random.ts';
import { bendInSpace } from './bend-in-space.ts';
import { type Circle, tautWay } from './line-on-tube.ts';
import { around } from './space-request.ts';

const radiusM = 0.01;

/** A straight tube along x from the tip side at x = L to the butt side at 0, as circles between the two ends. */
function straightTube(lengthM: number, count: number, aroundRad: (share: number) => number): Circle[] {
  return Array.from({ length: count }, (_, i) => {
    const share = (i + 1) / (count + 1);
    return {
      node: i,
      centre: [lengthM * (1 - share), 0, 0],
      d1: [0, 1, 0],
      d2: [0, 0, 1],
      radiusM,
      aroundRad: aroundRad(share),
    };
  });
}

function endOf(xM: number, aroundRad: number, heightM = radiusM): number[] {
  const [a, b] = around(aroundRad);
  return [xM, heightM * a, heightM * b];
}

describe('a taut line on a straight tube', () => {
  test.each([0.4, 1.5, 3])(
    'from surface to surface it is a helix (turned by %d): angles grow evenly',
    (turn) => {
      const random = seededRandom(2);
      const circles = straightTube(0.3, 40, (share) => turn * share + 0.2 * (random() - 0.5));
      const { aroundRad, touched } = tautWay(endOf(0.3, 0), endOf(0, turn), circles);
      expect(touched).toHaveLength(40);
      aroundRad.forEach((angle, i) => {
        expect(angle).toBeCloseTo((turn * (i + 1)) / 41, 6);
      });
    },
  );

  test('from rings off it, it runs straight to the tube, touches it, and leaves it: unrolled, it is straight', () => {
    const [height, turn, lengthM, count] = [0.02, 3, 0.3, 150];
    const circles = straightTube(lengthM, count, (share) => turn * share);
    const { touched } = tautWay(endOf(lengthM, 0, height), endOf(0, turn, height), circles);
    // seen along the tube the line is a tangent of length t, an arc, a tangent; it climbs in proportion
    const tangent = Math.sqrt(height ** 2 - radiusM ** 2);
    const off = Math.acos(radiusM / height);
    const arc = radiusM * (turn - 2 * off);
    const flat = 2 * tangent + arc;
    const firstM = lengthM * (1 - tangent / flat);
    const places = touched.map(({ node }) => circles[node].centre[0]);
    expect(Math.abs(places[0] - firstM)).toBeLessThan(lengthM / count);
    expect(lengthM - places.at(-1)!).toBeCloseTo(places[0], 6);
    expect(Math.abs(touched[0].aroundRad - off)).toBeLessThan(turn / count);
  });

  test('where the straight line clears the tube nothing touches', () => {
    const { touched } = tautWay(
      endOf(0.3, 0.1, 0.03),
      endOf(0, 0, 0.03),
      straightTube(0.3, 30, () => 0),
    );
    expect(touched).toEqual([]);
  });
});

/** On a surface of revolution the distance from its axis times the cosine to the parallel stays the same (Clairaut 1733). */
test('on a bent tube the line is a geodesic of the torus: Clairaut’s relation', () => {
  const [bendRadiusM, count] = [1, 80];
  // ends on the inner side, where a line cannot slide off
  const circles = Array.from({ length: count }, (_, i): Circle => {
    const phi = (0.5 * (i + 1)) / (count + 1);
    return {
      node: i,
      centre: [bendRadiusM * Math.cos(phi), bendRadiusM * Math.sin(phi), 0],
      d1: [Math.cos(phi), Math.sin(phi), 0],
      d2: [0, 0, 1],
      radiusM: 0.05,
      aroundRad: (-1.2 * (i + 1)) / (count + 1),
    };
  });
  const surface = (phi: number, aroundRad: number, r = 0.05) => {
    const [a, b] = around(aroundRad);
    const out = bendRadiusM + r * a;
    return [out * Math.cos(phi), out * Math.sin(phi), r * b];
  };
  const { aroundRad, touched } = tautWay(surface(0, -1.8), surface(0.5, 1.2), circles);
  const held = new Set(touched.map(({ node }) => node));
  const places = circles.map(({ node }, i) => surface((0.5 * (i + 1)) / (count + 1), aroundRad[node]));
  const constants = places.slice(1).flatMap((place, i) => {
    if (!held.has(i) || !held.has(i + 1)) return [];
    const middle = place.map((value, k) => 0.5 * (value + places[i][k]));
    const way = place.map((value, k) => value - places[i][k]);
    const axisM = Math.hypot(middle[0], middle[1]);
    const along = (middle[0] * way[1] - middle[1] * way[0]) / axisM;
    return [(axisM * along) / Math.hypot(...way)];
  });
  expect(constants.length).toBeGreaterThan(20);
  expect(Math.max(...constants) / Math.min(...constants) - 1).toBeLessThan(1e-4);
});

test('a stiff rod holds a helix: the line turns in each ring by the helix angle', () => {
  for (const turn of [0.5, 3]) {
    const lengthM = 0.3;
    const { status, rings, contact } = bendInSpace({
      rod: { lengthM: 0.4, stiffness: [{ fromTipM: 0, EINm2: 1e6 }], torsion: [{ fromTipM: 0, GJNm2: 1e6 }] },
      buttAngleRad: 0,
      guides: [
        { fromTipM: 0, ringHeightM: radiusM, aroundRad: 0 },
        { fromTipM: lengthM, ringHeightM: radiusM, aroundRad: turn },
      ],
      reel: { alongM: -0.1, offsetM: radiusM, aroundRad: turn },
      load: { line: { tensionN: 1, pullAngleRad: 0 } },
      contact: { diameters: [{ fromTipM: 0, outsideM: 2 * radiusM }] },
    });
    expect(status).toBe('converged');
    for (const ring of rings) expect(ring.lineAngleRad).toBeCloseTo(Math.atan((radiusM * turn) / lengthM), 5);
    expect(contact?.stretches.map(({ touches }) => touches)).toEqual([true, false]);
  }
});

/** T grows by exp(µ · total turn); the helix turns by curvature × length = turn · sin of its angle to the axis. */
test('over a cylinder the tension grows as a capstan’s', () => {
  const [lengthM, turn, coefficient] = [0.1, 3, 0.25];
  const { status, lineTensionN, rings } = bendInSpace({
    rod: { lengthM: 0.2, stiffness: [{ fromTipM: 0, EINm2: 1e7 }], torsion: [{ fromTipM: 0, GJNm2: 1e7 }] },
    buttAngleRad: 0,
    guides: [
      { fromTipM: 0, ringHeightM: radiusM, aroundRad: 0 },
      { fromTipM: lengthM, ringHeightM: radiusM, aroundRad: turn },
    ],
    reel: { alongM: -0.1, offsetM: radiusM, aroundRad: turn },
    load: { line: { tensionN: 1, pullAngleRad: 0 } },
    friction: { coefficient, direction: 'in' },
    contact: { diameters: [{ fromTipM: 0, outsideM: 2 * radiusM }] },
  });
  expect(status).toBe('converged');
  const helix = Math.atan((radiusM * turn) / lengthM);
  const overTube = turn * Math.sin(helix);
  const inRings = rings.reduce((sum, { lineAngleRad }) => sum + lineAngleRad, 0);
  // half a node's turn is lost at either end of the touched stretch
  expect(Math.log(lineTensionN!.at(-1)!) / coefficient / (inRings + overTube)).toBeCloseTo(1, 2);
});

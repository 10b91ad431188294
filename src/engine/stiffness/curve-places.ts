/**
 * A traced curve as readings square to itself.
 *
 * The curve is cut every few centimetres (arc length from the tip, since a blank does not stretch). At each the
 * reading is the place of the traced curve square to its own
 * direction ν, against the model's place at that station:
 *   reading = (x - x0) sin ν - (y - y0) cos ν
 * A station that is a little wrong slides along the curve and hardly changes it. Each place is the middle of a
 * parabola through its neighbourhood.
 */
import { bridgedOf } from './curve-bridges.ts';

export interface PlanePoint {
  xM: number;
  yM: number;
}
export interface CurvePlace extends PlanePoint {
  fromTipM: number;
  /** Direction of the curve, from hold to tip. */
  directionRad: number;
}
export interface CurvePlaces {
  /** Where the blank leaves its hold, and its direction there. */
  hold: CurvePlace;
  /** Hold side first, the tip last. */
  places: (CurvePlace & { bridgedM: number })[];
  /** From the first point to the last, along the curve. */
  tracedM: number;
  mirrored: boolean;
}

/** Errors of a trace hold on over about so much of the blank: readings closer together would repeat each other. */
const stepM = 0.05;

/** `points` from hold to tip; a rod that points to -x is turned about so that it points to +x. */
export function curvePlaces(
  points: readonly (PlanePoint & { sigmaM?: number })[],
  clampFromTipM: number,
  mirrored: boolean = pointsLeft(points),
): CurvePlaces {
  const turned = mirrored ? mirror(points) : points;
  const fromTip = arcFromTip(turned);
  const tracedM = fromTip[0];
  const reach = Math.min(tracedM, clampFromTipM);
  const at = (fromTipM: number) => smoothPlace(turned, fromTip, fromTipM, 0.5 * stepM);
  const stations = evenStations(reach).filter((s) => s < clampFromTipM - 0.02);
  const bridged = bridgedOf(points);
  const places = stations.map((station) => ({
    ...at(station),
    bridgedM: bridged[fromTip.findLastIndex((one) => one >= station - 1e-9)],
  }));
  return { hold: at(clampFromTipM), places, tracedM, mirrored };
}

/** Turned about where the rod points to -x. */
export function facingRight(points: readonly PlanePoint[]): readonly PlanePoint[] {
  return pointsLeft(points) ? mirror(points) : points;
}

export function pointsLeft(points: readonly PlanePoint[]): boolean {
  return points[points.length - 1].xM < points[0].xM;
}

function mirror(points: readonly PlanePoint[]): PlanePoint[] {
  return points.map(({ xM, yM }) => ({ xM: -xM, yM }));
}

/** Arc length from the tip per point, hold side first. */
export function arcFromTip(points: readonly PlanePoint[]): Float64Array {
  const out = new Float64Array(points.length);
  for (let i = points.length - 2; i >= 0; i--) {
    out[i] = out[i + 1] + Math.hypot(points[i + 1].xM - points[i].xM, points[i + 1].yM - points[i].yM);
  }
  return out;
}

function evenStations(reachM: number): number[] {
  const count = Math.max(8, Math.round(reachM / stepM) + 1);
  return Array.from({ length: count }, (_, i) => reachM * (1 - i / (count - 1)));
}

/** A parabola through the points within the window, in each coordinate; beyond the ends it is carried on. */
export function smoothPlace(
  points: readonly PlanePoint[],
  fromTip: Float64Array,
  fromTipM: number,
  windowM: number,
): CurvePlace {
  const inner = Math.min(Math.max(fromTipM, fromTip[fromTip.length - 1]), fromTip[0]);
  let near: number[] = [];
  for (let reach = windowM; near.length < 5 && reach < 100 * windowM; reach *= 1.5) {
    near = points.map((_, i) => i).filter((i) => Math.abs(fromTip[i] - inner) <= reach);
  }
  const t = near.map((i) => fromTip[i] - fromTipM);
  const x = parabola(
    t,
    near.map((i) => points[i].xM),
  );
  const y = parabola(
    t,
    near.map((i) => points[i].yM),
  );
  return { fromTipM, xM: x.value, yM: y.value, directionRad: Math.atan2(-y.slope, -x.slope) };
}

/** Value and slope at 0 of the least-squares parabola. */
function parabola(t: readonly number[], v: readonly number[]): { value: number; slope: number } {
  const scale = Math.max(...t.map(Math.abs)) || 1;
  const moment = [0, 0, 0, 0, 0];
  const right = [0, 0, 0];
  t.forEach((ti, i) => {
    const u = ti / scale;
    for (let k = 0, power = 1; k < 5; k++, power *= u) {
      moment[k] += power;
      if (k < 3) right[k] += power * v[i];
    }
  });
  const [c0, c1] = solveThree(moment, right);
  return { value: c0, slope: c1 / scale };
}

/** By Cramer's rule on the moments 0 to 4. */
function solveThree([m0, m1, m2, m3, m4]: readonly number[], [a, b, c]: readonly number[]) {
  const determinant = (p: number[], q: number[], r: number[]) =>
    p[0] * (q[1] * r[2] - q[2] * r[1]) -
    q[0] * (p[1] * r[2] - p[2] * r[1]) +
    r[0] * (p[1] * q[2] - p[2] * q[1]);
  const columns = [
    [m0, m1, m2],
    [m1, m2, m3],
    [m2, m3, m4],
  ];
  const all = determinant(columns[0], columns[1], columns[2]);
  const right = [a, b, c];
  return [
    determinant(right, columns[1], columns[2]) / all,
    determinant(columns[0], right, columns[2]) / all,
    determinant(columns[0], columns[1], right) / all,
  ];
}

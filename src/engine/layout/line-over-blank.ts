/**
 * The line as it is drawn past a bent blank: straight from ring to ring, and where that would run through the blank, over
 * its surface the shortest way. The blank is the one bent without contact: what the line lying on it bends it more stays
 * under what a drawing shows. Exact contact: bend/contact.ts and space/contact-in-space.ts.
 */
import { cornersOfWay } from '../bend/contact.ts';
import { type PiecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { type Circle, tautWay } from '../space/line-on-tube.ts';
import { around } from '../space/space-request.ts';
import type { LoadReading } from './ladder.ts';

export interface PlaceOfLine {
  xM: number;
  yM: number;
  zM?: number;
}
export type BentBlank = Pick<LoadReading, 'fromTipM' | 'xM' | 'yM' | 'angleRad' | 'zM' | 'rings'>;

/** Per stretch, tip first, the last one to the reel: where the line lies on the blank, tip side first; empty where it does not. */
export function lineOverBlank(
  blank: BentBlank,
  ringFromTipM: readonly number[],
  reel: PlaceOfLine,
  outside: PiecewiseLinear,
): PlaceOfLine[][] {
  const ends = [...blank.rings, reel].map(placeOf);
  return ringFromTipM.map((fromTipM, k) => {
    const toTipM = ringFromTipM[k + 1] ?? Number.POSITIVE_INFINITY;
    const nodes = nodesBetween(blank, fromTipM, toTipM);
    const [tipSide, buttSide] = [ends[k], ends[k + 1]];
    const circles = turningEvenly(
      nodes.map((node) => circleAt(blank, node, outside)),
      tipSide,
      buttSide,
    );
    if (!nearsBlank(circles, tipSide, buttSide)) return [];
    if (!blank.zM) return inPlane(circles, tipSide, buttSide);
    const way = tautWay(tipSide, buttSide, circles);
    return way.touched.map(({ node, aroundRad }) => onCircle(circles[nodes.indexOf(node)], aroundRad));
  });
}

const placeOf = ({ xM, yM, zM = 0 }: PlaceOfLine) => [xM, yM, zM];

/** Nodes are told from the tip; those at the rings themselves carry no line. */
function nodesBetween({ fromTipM }: BentBlank, tipM: number, buttM: number): number[] {
  const nodes: number[] = [];
  for (let i = 0; i < fromTipM.length; i++) {
    if (fromTipM[i] > tipM + 1e-6 && fromTipM[i] < buttM - 1e-6) nodes.push(i);
  }
  return nodes;
}

/** Axes as in space/state.ts: d1 towards over, d2 to the right, both square to the blank there. */
function circleAt(blank: BentBlank, node: number, outside: PiecewiseLinear): Circle {
  const { fromTipM, angleRad } = blank;
  const along = tangentAt(blank, node);
  const up = [-Math.sin(angleRad[node]), Math.cos(angleRad[node]), 0];
  const d1 = unit(up.map((part, i) => part - dot(up, along) * along[i]));
  return {
    node,
    centre: centreAt(blank, node),
    d1,
    d2: cross(along, d1),
    radiusM: 0.5 * valueAt(outside, fromTipM[node]),
    aroundRad: 0,
  };
}

function centreAt({ xM, yM, zM }: BentBlank, node: number): number[] {
  return [xM[node], yM[node], zM?.[node] ?? 0];
}

/** Towards the tip. */
function tangentAt(blank: BentBlank, node: number): number[] {
  const [tip, butt] = [Math.max(0, node - 1), Math.min(blank.fromTipM.length - 1, node + 1)];
  const [a, b] = [centreAt(blank, tip), centreAt(blank, butt)];
  return unit(a.map((part, i) => part - b[i]));
}

/** All on one side: the line is kept there, where a hand or a cast would not let it slide off. */
function inPlane(circles: readonly Circle[], tipSide: Vector, buttSide: Vector): PlaceOfLine[] {
  const side = Math.cos(circles[0].aroundRad) < 0 ? 1 : -1;
  const flat = ([xM, yM]: Vector) => ({ xM, yM });
  const surface = circles.map((circle) => {
    const { xM, yM } = onCircle(circle, side > 0 ? Math.PI : 0);
    return { xM, yM };
  });
  return cornersOfWay(flat(tipSide), surface, flat(buttSide), side);
}

/** From where the one ring stands round the blank to where the other does, the shorter way. */
function turningEvenly(circles: Circle[], tipSide: Vector, buttSide: Vector): Circle[] {
  if (circles.length === 0) return [];
  const from = standsAround(circles[0], tipSide);
  const turn = standsAround(circles[circles.length - 1], buttSide) - from;
  const turnRad = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  return circles.map((circle, i) => ({
    ...circle,
    aroundRad: from + (turnRad * (i + 1)) / (circles.length + 1),
  }));
}

function standsAround({ centre, d1, d2 }: Circle, place: Vector): number {
  const off = minus(place, centre);
  return Math.atan2(dot(off, d2), -dot(off, d1));
}

/** Whether the straight line leaves the rings' side of the blank, or comes as near as its surface, anywhere. */
function nearsBlank(circles: readonly Circle[], from: Vector, to: Vector): boolean {
  const way = minus(to, from);
  return circles.some((circle) => {
    const off = minus(circle.centre, from);
    const share = dot(off, way) / dot(way, way);
    const [a, b] = around(circle.aroundRad);
    const outwards = circle.d1.map((part, i) => a * part + b * circle.d2[i]);
    const toLine = way.map((part, i) => share * part - off[i]);
    return dot(toLine, outwards) < circle.radiusM;
  });
}

function onCircle({ centre, d1, d2, radiusM }: Circle, aroundRad: number): PlaceOfLine {
  const [a, b] = around(aroundRad);
  const [xM, yM, zM] = centre.map((part, i) => part + radiusM * (a * d1[i] + b * d2[i]));
  return { xM, yM, zM };
}

type Vector = readonly number[];
const minus = (a: Vector, b: Vector) => a.map((part, i) => part - b[i]);
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a: Vector) => a.map((part) => part / Math.hypot(...a));
const cross = (a: Vector, b: Vector) => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

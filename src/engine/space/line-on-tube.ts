/**
 * A taut line from one ring to the next past a round blank: the shortest way outside it (a geodesic where it lies on the
 * blank, straight elsewhere). The way crosses each node's plane at a distance r ≥ ρ from the axis and an angle round it;
 * its length is made least by Newton steps on both, those held that press on the blank, each step shortened until the
 * length falls. On the outer side of a bent blank the line may slide off to the side: that way is shorter.
 */
import { around } from './space-request.ts';

/** A circle of the blank's surface; arrays from the tip side to the butt side. */
export interface Circle {
  node: number;
  centre: readonly number[];
  d1: readonly number[];
  d2: readonly number[];
  radiusM: number;
  /** Where the line crosses this plane, to start from. */
  aroundRad: number;
}
export interface TouchedCircle {
  node: number;
  aroundRad: number;
}
/** Where the line crosses each plane, and which circles it presses on. */
export interface TautWay {
  aroundRad: number[];
  touched: TouchedCircle[];
}

export function tautWay(
  tipSide: readonly number[],
  buttSide: readonly number[],
  circles: readonly Circle[],
): TautWay {
  const way: Way = {
    tipSide,
    buttSide,
    circles,
    r: circles.map(({ radiusM }) => radiusM),
    angle: circles.map(({ aroundRad }) => aroundRad),
  };
  let here = measure(way);
  let lift = 0;
  // a circle at each end of a touched stretch may be let go per step
  const most = 100 + 2 * circles.length;
  for (let iteration = 0; iteration < most; iteration++) {
    const held = here.out.map((pull, i) => way.r[i] <= circles[i].radiusM && pull > 0);
    if (residual(here, held) < 1e-10) break;
    const step = newtonStep(way, here, held, lift);
    const next = step && shorter(way, here, step);
    lift = next ? (lift > 1e-6 ? 0.1 * lift : 0) : Math.max(10 * lift, 1e-3);
    if (next) here = next;
    else if (lift > 1e9) break;
  }
  const touched = circles.flatMap(({ node, radiusM }, i) =>
    way.r[i] <= radiusM && here.out[i] > 1e-9 ? [{ node, aroundRad: way.angle[i] }] : [],
  );
  return { aroundRad: way.angle, touched };
}

interface Way {
  tipSide: readonly number[];
  buttSide: readonly number[];
  circles: readonly Circle[];
  r: number[];
  angle: number[];
}

/** Length, segments, and the length's derivative by moving each crossing outwards and round. */
interface Measured {
  length: number;
  u: number[][];
  over: number[];
  outward: number[][];
  round: number[][];
  out: number[];
  turn: number[];
}

function measure({ tipSide, buttSide, circles, r, angle }: Way): Measured {
  const outward: number[][] = [];
  const round: number[][] = [];
  const places = circles.map(({ centre, d1, d2 }, i) => {
    const [a, b] = around(angle[i]);
    outward.push(d1.map((value, k) => a * value + b * d2[k]));
    round.push(d1.map((value, k) => b * value - a * d2[k]));
    return centre.map((value, k) => value + r[i] * outward[i][k]);
  });
  const way = [tipSide, ...places, buttSide];
  const sizes = way.slice(1).map((place, i) => Math.max(distance(way[i], place), 1e-12));
  const u = sizes.map((size, i) => way[i + 1].map((value, k) => (value - way[i][k]) / size));
  const pull = circles.map((_, i) => u[i].map((value, k) => value - u[i + 1][k]));
  return {
    length: sizes.reduce((sum, size) => sum + size, 0),
    u,
    over: sizes.map((size) => 1 / size),
    outward,
    round,
    out: pull.map((g, i) => dot(g, outward[i])),
    turn: pull.map((g, i) => dot(g, round[i])),
  };
}

function residual({ out, turn }: Measured, held: readonly boolean[]): number {
  return out.reduce((most, pull, i) => Math.max(most, held[i] ? 0 : Math.abs(pull), Math.abs(turn[i])), 0);
}

/** Moves outwards and round (as lengths), two by two; undefined where the lifted matrix is not positive. */
function newtonStep(way: Way, here: Measured, held: readonly boolean[], lift: number): number[] | undefined {
  const n = held.length;
  const axes = (i: number) => [held[i] ? [0, 0, 0] : here.outward[i], here.round[i]];
  const between = (segment: number, a: readonly number[], b: readonly number[]) =>
    here.over[segment] * (dot(a, b) - dot(here.u[segment], a) * dot(here.u[segment], b));
  const x = new Array<number>(2 * n);
  const pivots: number[][] = [];
  const factors: number[][] = [];
  let fill = [0, 0, 0];
  let [carryOut, carryTurn] = [0, 0];
  for (let i = 0; i < n; i++) {
    const [o, t] = axes(i);
    const both = (a: readonly number[], b: readonly number[]) => between(i, a, b) + between(i + 1, a, b);
    const mixed = held[i] ? 0 : here.turn[i] / way.r[i];
    const oo = (held[i] ? 1 : both(o, o) + lift) + fill[0];
    const ot = both(o, t) + mixed + fill[1];
    const tt = both(t, t) - here.out[i] / way.r[i] + lift + fill[2];
    const determinant = oo * tt - ot * ot;
    if (!(oo > 0 && determinant > 0)) return undefined;
    x[2 * i] = (held[i] ? 0 : -here.out[i]) + carryOut;
    x[2 * i + 1] = -here.turn[i] + carryTurn;
    pivots.push([tt / determinant, -ot / determinant, oo / determinant]);
    if (i + 1 === n) break;
    const [p, q] = axes(i + 1);
    const c = [-between(i + 1, o, p), -between(i + 1, o, q), -between(i + 1, t, p), -between(i + 1, t, q)];
    const [a, b, d] = pivots[i];
    // rows of pivot⁻¹ times the coupling
    const m = [a * c[0] + b * c[2], a * c[1] + b * c[3], b * c[0] + d * c[2], b * c[1] + d * c[3]];
    factors.push(m);
    fill = [-(c[0] * m[0] + c[2] * m[2]), -(c[0] * m[1] + c[2] * m[3]), -(c[1] * m[1] + c[3] * m[3])];
    carryOut = -(m[0] * x[2 * i] + m[2] * x[2 * i + 1]);
    carryTurn = -(m[1] * x[2 * i] + m[3] * x[2 * i + 1]);
  }
  return backwards(x, pivots, factors);
}

function backwards(x: number[], pivots: readonly number[][], factors: readonly number[][]): number[] {
  for (let i = pivots.length - 1; i >= 0; i--) {
    const [a, b, d] = pivots[i];
    const [p, q] = [x[2 * i], x[2 * i + 1]];
    x[2 * i] = a * p + b * q;
    x[2 * i + 1] = b * p + d * q;
    if (i + 1 === pivots.length) continue;
    const [m0, m1, m2, m3] = factors[i];
    x[2 * i] -= m0 * x[2 * i + 2] + m1 * x[2 * i + 3];
    x[2 * i + 1] -= m2 * x[2 * i + 2] + m3 * x[2 * i + 3];
  }
  return x;
}

/** Takes the step, or a part of it, that makes the way shorter; the way is left as it was where none does. */
function shorter(way: Way, here: Measured, step: readonly number[]): Measured | undefined {
  const before = { r: [...way.r], angle: [...way.angle] };
  for (let share = 1; share > 1e-4; share *= 0.4) {
    way.circles.forEach(({ radiusM }, i) => {
      way.r[i] = Math.max(radiusM, before.r[i] + share * step[2 * i]);
      const turn = (share * step[2 * i + 1]) / before.r[i];
      way.angle[i] = before.angle[i] + Math.max(-0.4, Math.min(0.4, turn));
    });
    const next = measure(way);
    if (next.length <= here.length + 1e-15) return next;
  }
  way.r = before.r;
  way.angle = before.angle;
  return undefined;
}

function distance(a: readonly number[], b: readonly number[]): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}
function dot(a: readonly number[], b: readonly number[]): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/**
 * A second curve of the same rod laid on the first by a small rigid move.
 *
 * With p a place of the second curve, q its foot on the first, n square to the first there, the move u = (a, b, φ)
 * about the second curve's middle m minimises Σ [n·(q − p − (a, b) − φ (p − m)⊥)]² / (σ₁² + σ₂²) + Σ (u/σᵤ)²;
 * feet and normals are taken anew until it stands. Only what is square to the curve counts: along a straight piece
 * the second term keeps the move small. Assumes small turns. Point-to-line alignment (Chen and Medioni 1992, from
 * memory); the spreads σᵤ are judgement.
 */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';

export interface SeenPoint {
  xM: number;
  yM: number;
  /** Standard error square to the curve. */
  sigmaM: number;
}
export interface RigidMove {
  /** Of the middle it turns about. */
  shiftXM: number;
  shiftYM: number;
  /** Counter-clockwise, x right and y up. */
  turnRad: number;
  aboutXM: number;
  aboutYM: number;
}
/** The nearest place of the first curve. */
export interface Foot extends SeenPoint {
  /** Index of the first curve's point before it. */
  index: number;
  alongM: number;
  /** From the foot to the place, square to the curve; left of its direction is positive. */
  offM: number;
  normal: readonly [number, number];
}
export interface Alignment {
  move: RigidMove;
  /** By point of the second curve, after the move; undefined beyond the ends of the first. */
  feet: (Foot | undefined)[];
}

const turns = 8;
const priorTurnRad = 0.03;
/** A tap, a shadow, a trace's own unevenness: below this no curve is known. */
const leastSigmaM = 0.001;

/** Where `seen` stands after the move. */
export function moved<P extends { xM: number; yM: number }>(seen: P, move: RigidMove): P {
  const [dx, dy] = [seen.xM - move.aboutXM, seen.yM - move.aboutYM];
  const [c, s] = [Math.cos(move.turnRad), Math.sin(move.turnRad)];
  return {
    ...seen,
    xM: move.aboutXM + move.shiftXM + c * dx - s * dy,
    yM: move.aboutYM + move.shiftYM + s * dx + c * dy,
  };
}

/** Lays `second` on `first`; both need two points or more. */
export function alignCurve(first: readonly SeenPoint[], second: readonly SeenPoint[]): Alignment {
  const mean = (key: 'xM' | 'yM') => second.reduce((sum, point) => sum + point[key], 0) / second.length;
  let move: RigidMove = { shiftXM: 0, shiftYM: 0, turnRad: 0, aboutXM: mean('xM'), aboutYM: mean('yM') };
  for (let turn = 0; turn < turns; turn++) {
    const here = second.map((point) => moved(point, move));
    move = better(move, here, feetOn(first, here));
  }
  return {
    move,
    feet: feetOn(
      first,
      second.map((point) => moved(point, move)),
    ),
  };
}

/** Feet of places on a curve. */
export function feetOn(curve: readonly SeenPoint[], places: readonly SeenPoint[]): (Foot | undefined)[] {
  const along = [0];
  for (let i = 1; i < curve.length; i++) {
    along.push(along[i - 1] + Math.hypot(curve[i].xM - curve[i - 1].xM, curve[i].yM - curve[i - 1].yM));
  }
  return places.map((place) => footOf(curve, along, place));
}

/** How far apart two curves are that may differ by what is known of each. */
export function apartSigmaM(foot: Foot, place: SeenPoint): number {
  return Math.hypot(foot.sigmaM, place.sigmaM, leastSigmaM);
}

function footOf(curve: readonly SeenPoint[], along: readonly number[], { xM, yM }: SeenPoint) {
  let best = { square: Number.POSITIVE_INFINITY, i: 0, t: 0 };
  for (let i = 0; i + 1 < curve.length; i++) {
    const [dx, dy] = [curve[i + 1].xM - curve[i].xM, curve[i + 1].yM - curve[i].yM];
    const raw = ((xM - curve[i].xM) * dx + (yM - curve[i].yM) * dy) / (dx * dx + dy * dy || 1);
    const t = Math.min(1, Math.max(0, raw));
    const square = (xM - curve[i].xM - t * dx) ** 2 + (yM - curve[i].yM - t * dy) ** 2;
    if (square < best.square) best = { square, i, t };
  }
  const { i, t } = best;
  if ((i === 0 && t === 0) || (i === curve.length - 2 && t === 1)) return undefined;
  return footAt(curve, along, i, t, { xM, yM });
}

function footAt(
  curve: readonly SeenPoint[],
  along: readonly number[],
  index: number,
  t: number,
  place: { xM: number; yM: number },
): Foot {
  const [a, b] = [curve[index], curve[index + 1]];
  const mix = (key: keyof SeenPoint) => a[key] + t * (b[key] - a[key]);
  const lengthM = along[index + 1] - along[index] || 1;
  const normal = [-(b.yM - a.yM) / lengthM, (b.xM - a.xM) / lengthM] as const;
  const foot = { xM: mix('xM'), yM: mix('yM'), sigmaM: mix('sigmaM') };
  const offM = normal[0] * (place.xM - foot.xM) + normal[1] * (place.yM - foot.yM);
  return { ...foot, index, alongM: along[index] + t * lengthM, offM, normal };
}

/** One step of the least squares; what the move already is counts in its own spread. */
function better(move: RigidMove, here: readonly SeenPoint[], feet: readonly (Foot | undefined)[]): RigidMove {
  const a = new Float64Array(9);
  const b = new Float64Array(3);
  let sigmaM = leastSigmaM;
  here.forEach((place, i) => {
    const foot = feet[i];
    if (!foot) return;
    const apart = apartSigmaM(foot, place);
    sigmaM = Math.max(sigmaM, apart);
    const [dx, dy] = [place.xM - move.aboutXM - move.shiftXM, place.yM - move.aboutYM - move.shiftYM];
    const row = [foot.normal[0], foot.normal[1], foot.normal[1] * dx - foot.normal[0] * dy];
    addRow(a, b, row, -foot.offM, 1 / apart ** 2);
  });
  const so = [move.shiftXM, move.shiftYM, move.turnRad];
  for (const [k, spread] of [sigmaM, sigmaM, priorTurnRad].entries()) {
    addRow(
      a,
      b,
      [0, 1, 2].map((j) => Number(j === k)),
      -so[k],
      1 / spread ** 2,
    );
  }
  if (!factorCholesky(a, 3)) return move;
  solveLower(a, 3, b, b);
  solveUpper(a, 3, b, b);
  return { ...move, shiftXM: so[0] + b[0], shiftYM: so[1] + b[1], turnRad: so[2] + b[2] };
}

function addRow(
  a: Float64Array,
  b: Float64Array,
  row: readonly number[],
  value: number,
  weight: number,
): void {
  for (let i = 0; i < 3; i++) {
    b[i] += weight * row[i] * value;
    for (let j = 0; j < 3; j++) a[3 * i + j] += weight * row[i] * row[j];
  }
}

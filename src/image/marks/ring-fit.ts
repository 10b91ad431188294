/**
 * The ring's outer edge round a crossing, as an ellipse about it.
 *
 * 1/r² = a·cos²ψ + b·sin²ψ + 2c·sinψ·cosψ along 64 rays. Edges from dark to light going outwards are noted on every
 * ray; three rays a sixth of a turn apart propose an ellipse, and the one that most rays agree with is fitted by
 * least squares. What covers a part of the ring costs only its rays.
 * Source: proposal and vote after M. Fischler and R. Bolles, "Random sample consensus", Comm. ACM 24 (1981)
 * 381-395, with every proposal tried instead of chance.
 */
import { inverse, Matrix, solve } from 'ml-matrix';
import { type GreyImage, greyAt } from '../pixels.ts';

export interface RingFit {
  /** Picture offset = stretch · (unit circle, y down): symmetric, row-major. */
  stretch: [number, number, number, number];
  /** Mean radius, pixels. */
  radiusPx: number;
  /** Share of the rays that see the edge where the ellipse says. */
  agreeing: number;
}

interface RingChoice {
  leastRadiusPx: number;
  mostRadiusPx: number;
  /** Shorter over longer axis at least. */
  leastFlatness: number;
  leastAgreeing: number;
}

const ringChoice: RingChoice = {
  leastRadiusPx: 11,
  mostRadiusPx: 52,
  leastFlatness: 0.45,
  leastAgreeing: 0.62,
};

const rays = 64;
const terms = Array.from({ length: rays }, (_, i) => {
  const psi = (2 * Math.PI * i) / rays;
  const [cos, sin] = [Math.cos(psi), Math.sin(psi)];
  return { cos, sin, squares: [cos * cos, sin * sin, 2 * cos * sin] as const };
});

type Conic = [number, number, number];

export function ringFit(
  image: GreyImage,
  x: number,
  y: number,
  leastStep: number,
  choice = ringChoice,
): RingFit | undefined {
  const edges = terms.map((ray) => edgesAlong(image, x, y, ray, leastStep, choice));
  if (edges.filter((list) => list.length > 0).length < choice.leastAgreeing * rays) return undefined;
  let best: { conic: Conic; votes: number } | undefined;
  for (let first = 0; first < rays / 3 && (best?.votes ?? 0) < 0.95 * rays; first++) {
    for (const conic of proposals(edges, first, choice)) {
      const votes = votesFor(conic, edges);
      if (votes > (best?.votes ?? 0)) best = { conic, votes };
    }
  }
  if (best === undefined || best.votes < choice.leastAgreeing * rays) return undefined;
  let conic = best.conic;
  for (let round = 0; round < 2; round++) conic = leastSquares(conic, edges);
  const stretch = stretchOf(conic, choice);
  if (stretch === undefined) return undefined;
  return { ...stretch, agreeing: votesFor(conic, edges) / rays };
}

/** Places along a ray where dark turns to light, up to five, nearest first. */
function edgesAlong(
  image: GreyImage,
  x: number,
  y: number,
  ray: { cos: number; sin: number },
  leastStep: number,
  choice: RingChoice,
): number[] {
  const step = 0.5;
  const from = 0.75 * choice.leastRadiusPx;
  const count = Math.floor((1.12 * choice.mostRadiusPx - from) / step);
  const out: number[] = [];
  let before = 0;
  let here = 0;
  for (let i = 0; i < count && out.length < 5; i++) {
    const r = from + i * step;
    const rise =
      greyAt(image, x + (r + 1) * ray.cos, y + (r + 1) * ray.sin) -
      greyAt(image, x + (r - 1) * ray.cos, y + (r - 1) * ray.sin);
    if (here > leastStep && here >= before && here > rise) {
      const bend = before - 2 * here + rise;
      out.push(r - step + (bend < 0 ? (step * (before - rise)) / (2 * bend) : 0));
    }
    before = here;
    here = rise;
  }
  return out;
}

/** Three rays a sixth of a turn apart, and what takes their 1/r² to a conic. */
const triples = Array.from({ length: Math.floor(rays / 3) + 1 }, (_, first) => {
  const at = [first, first + 11, first + 21].map((i) => i % rays);
  return { at, toConic: inverse(new Matrix(at.map((i) => rowOf(i)))).to1DArray() };
});

function* proposals(edges: readonly number[][], first: number, choice: RingChoice): Generator<Conic> {
  const { at, toConic: k } = triples[first];
  for (const a of edges[at[0]]) {
    for (const b of edges[at[1]]) {
      if (b < choice.leastFlatness * a || a < choice.leastFlatness * b) continue;
      for (const c of edges[at[2]]) {
        if (c < choice.leastFlatness * a || a < choice.leastFlatness * c) continue;
        const [p, q, s] = [1 / (a * a), 1 / (b * b), 1 / (c * c)];
        const conic: Conic = [
          k[0] * p + k[1] * q + k[2] * s,
          k[3] * p + k[4] * q + k[5] * s,
          k[6] * p + k[7] * q + k[8] * s,
        ];
        if (isRing(conic, choice)) yield conic;
      }
    }
  }
}

function rowOf(i: number): [number, number, number] {
  return [...terms[i].squares];
}

function radiusAt([a, b, c]: Conic, i: number): number {
  const { squares } = terms[i];
  return 1 / Math.sqrt(Math.max(1e-9, a * squares[0] + b * squares[1] + c * squares[2]));
}

/** The edge of a ray that belongs to the ellipse, if one lies within 5 % or a pixel. */
function edgeOn(conic: Conic, edges: readonly number[][], i: number): number | undefined {
  const radius = radiusAt(conic, i);
  const near = Math.max(1, 0.05 * radius);
  for (const r of edges[i]) if (Math.abs(r - radius) < near) return r;
  return undefined;
}

function votesFor(conic: Conic, edges: readonly number[][]): number {
  let votes = 0;
  for (let i = 0; i < rays; i++) {
    if (edgeOn(conic, edges, i) !== undefined) votes++;
    // Hopeless after half of the rays.
    if (i === rays / 2 && votes < rays / 5) return votes;
  }
  return votes;
}

/** Weights turn errors of 1/r² into errors of r. */
function leastSquares(conic: Conic, edges: readonly number[][]): Conic {
  const normal = Matrix.zeros(3, 3);
  const right = Matrix.zeros(3, 1);
  for (let i = 0; i < rays; i++) {
    const r = edgeOn(conic, edges, i);
    if (r === undefined) continue;
    const row = rowOf(i);
    const weight = r ** 6;
    for (let a = 0; a < 3; a++) {
      right.set(a, 0, right.get(a, 0) + (weight * row[a]) / (r * r));
      for (let b = 0; b < 3; b++) normal.set(a, b, normal.get(a, b) + weight * row[a] * row[b]);
    }
  }
  const [p, q, s] = solve(normal, right).to1DArray();
  return [p, q, s];
}

/** Whether the conic is an ellipse of a size and flatness looked for. */
function isRing([a, b, c]: Conic, choice: RingChoice): boolean {
  const middle = (a + b) / 2;
  const spread = Math.sqrt(((a - b) * (a - b)) / 4 + c * c);
  const least = middle - spread;
  const most = middle + spread;
  if (!(least > 0) || least < choice.leastFlatness ** 2 * most) return false;
  const area = 1 / Math.sqrt(least * most);
  return area > choice.leastRadiusPx ** 2 && area < choice.mostRadiusPx ** 2;
}

/** Inverse square root of the conic's matrix; undefined where that is no ring looked for. */
function stretchOf([a, b, c]: Conic, choice: RingChoice): Omit<RingFit, 'agreeing'> | undefined {
  if (!isRing([a, b, c], choice)) return undefined;
  const middle = (a + b) / 2;
  const spread = Math.hypot((a - b) / 2, c);
  const long = 1 / Math.sqrt(middle - spread);
  const short = 1 / Math.sqrt(middle + spread);
  const radiusPx = Math.sqrt(long * short);
  // The long axis is the conic's direction of the smaller eigenvalue.
  const angle = 0.5 * Math.atan2(-2 * c, b - a);
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const xy = (long - short) * cos * sin;
  return {
    stretch: [long * cos * cos + short * sin * sin, xy, xy, long * sin * sin + short * cos * cos],
    radiusPx,
  };
}

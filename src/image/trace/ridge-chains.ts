/**
 * Better headings for ridge points: each point's neighbours along its own line, up to a given reach each way,
 * are fitted by a parabola in the point's tangent frame; its slope at the point corrects the tangent.
 * A crossing or corner ends the chain, so a heading says where its own line goes, not a blend of two.
 */
import type { RidgePoints } from './ridge-points.ts';

export interface ChainChoice {
  reachPx: number;
  /** A neighbour whose tangent differs by more than this is another line's. */
  widestTurnRad: number;
}

/** Rewrites the tangents in place and returns the length of line that supports each, in pixels. */
export function ridgeHeadings(
  points: RidgePoints,
  width: number,
  height: number,
  choice: ChainChoice,
): Float32Array {
  const at = new Int32Array(width * height).fill(-1);
  for (let i = 0; i < points.count; i++) at[pixelOf(points, i, width, height)] = i;
  const support = new Float32Array(points.count);
  const tangentX = new Float32Array(points.count);
  const tangentY = new Float32Array(points.count);
  const chain = new Int32Array(4 * Math.ceil(choice.reachPx) + 8);
  for (let i = 0; i < points.count; i++) {
    let length = walk(i, 1, 0);
    const forward = reachOf(i, length);
    const total = walk(i, -1, length);
    length = total;
    const backward = reachOf(i, length);
    support[i] = Math.min(forward, backward) * 2;
    const slope = slopeAt(points, i, chain, length);
    const tx = points.tangentX[i] - slope * points.tangentY[i];
    const ty = points.tangentY[i] + slope * points.tangentX[i];
    const norm = Math.hypot(tx, ty);
    tangentX[i] = tx / norm;
    tangentY[i] = ty / norm;
  }
  points.tangentX = tangentX;
  points.tangentY = tangentY;
  return support;

  function reachOf(i: number, length: number): number {
    if (length === 0) return 0;
    const end = chain[length - 1];
    return Math.hypot(points.x[end] - points.x[i], points.y[end] - points.y[i]);
  }

  /** Steps from neighbour to neighbour; appends to the chain from `used` on and returns its new length. */
  function walk(from: number, sign: number, used: number): number {
    let here = from;
    let hx = points.tangentX[from] * sign;
    let hy = points.tangentY[from] * sign;
    let length = used;
    while (length < chain.length) {
      const next = nextAlong(points, at, width, height, here, hx, hy, choice.widestTurnRad);
      if (next < 0) break;
      if (Math.hypot(points.x[next] - points.x[from], points.y[next] - points.y[from]) > choice.reachPx)
        break;
      const same = points.tangentX[next] * hx + points.tangentY[next] * hy >= 0 ? 1 : -1;
      hx = points.tangentX[next] * same;
      hy = points.tangentY[next] * same;
      chain[length++] = next;
      here = next;
    }
    return length;
  }
}

function pixelOf(points: RidgePoints, i: number, width: number, height: number): number {
  const x = Math.min(width - 1, Math.max(0, Math.round(points.x[i])));
  const y = Math.min(height - 1, Math.max(0, Math.round(points.y[i])));
  return y * width + x;
}

/** The best next point of the same line among the pixels one or two steps ahead, or −1. */
function nextAlong(
  points: RidgePoints,
  at: Int32Array,
  width: number,
  height: number,
  here: number,
  hx: number,
  hy: number,
  widestTurnRad: number,
): number {
  const x = Math.round(points.x[here]);
  const y = Math.round(points.y[here]);
  const least = Math.cos(widestTurnRad);
  let best = -1;
  let bestScore = Infinity;
  for (let dy = -2; dy <= 2; dy++) {
    for (let dx = -2; dx <= 2; dx++) {
      const px = x + dx;
      const py = y + dy;
      if (px < 0 || py < 0 || px >= width || py >= height) continue;
      const q = at[py * width + px];
      if (q < 0 || q === here || points.polarity[q] !== points.polarity[here]) continue;
      const ox = points.x[q] - points.x[here];
      const oy = points.y[q] - points.y[here];
      const ahead = ox * hx + oy * hy;
      if (ahead < 0.4) continue;
      const aside = Math.abs(ox * hy - oy * hx);
      const alike = Math.abs(points.tangentX[q] * hx + points.tangentY[q] * hy);
      if (alike < least || aside > 0.9 * ahead) continue;
      const score = Math.abs(ahead - 1) + 1.5 * aside + 4 * (1 - alike);
      if (score < bestScore) {
        bestScore = score;
        best = q;
      }
    }
  }
  return best;
}

/** Slope at the origin of the parabola v = a + b·u + c·u² through the chain in the point's own frame. */
function slopeAt(points: RidgePoints, i: number, chain: Int32Array, length: number): number {
  if (length < 4) return 0;
  const tx = points.tangentX[i];
  const ty = points.tangentY[i];
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let v0 = 0;
  let v1 = 0;
  let v2 = 0;
  for (let k = 0; k < length; k++) {
    const ox = points.x[chain[k]] - points.x[i];
    const oy = points.y[chain[k]] - points.y[i];
    const u = ox * tx + oy * ty;
    const v = oy * tx - ox * ty;
    s1 += u;
    s2 += u * u;
    s3 += u * u * u;
    s4 += u * u * u * u;
    v0 += v;
    v1 += u * v;
    v2 += u * u * v;
  }
  const s0 = length + 1;
  const determinant = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  if (Math.abs(determinant) < 1e-9) return 0;
  // Cramer's rule for the middle unknown.
  const slope =
    (s0 * (v1 * s4 - s3 * v2) - v0 * (s1 * s4 - s2 * s3) + s2 * (s1 * v2 - v1 * s2)) / determinant;
  return Math.max(-0.5, Math.min(0.5, slope));
}

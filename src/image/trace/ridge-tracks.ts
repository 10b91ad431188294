/**
 * Long smooth lines of a picture, found without taps: from the clearest ridge points outwards, each step to the
 * neighbour that best goes on in direction, width, colour and polarity, over gaps that are short for what was followed.
 * Assumption: such a line turns by little within a few times its width. Greedy: a line may be lost in clutter, so what is
 * built on it may miss things, but it is quick (every point is a seed at most once).
 */
import type { CoarseRidges } from './coarse-path.ts';
import { pointsWithin, type RidgeGrid, ridgeGrid } from './ridge-grid.ts';

export interface TrackChoice {
  leastLengthPx: number;
  /** Seeds need this much line behind them, and this strength. */
  seedSupportPx: number;
  seedStrength: number;
  /** Steps to the next point, and the longest jump as a share of what was followed. */
  stepPx: { least: number; plain: number; most: number };
  jumpShare: number;
  turnSigmaRad: number;
  /** A step dearer than this is none. */
  mostCost: number;
  mostTracks: number;
}

export const trackChoice: TrackChoice = {
  leastLengthPx: 200,
  seedSupportPx: 16,
  seedStrength: 10,
  stepPx: { least: 3, plain: 12, most: 60 },
  jumpShare: 0.25,
  turnSigmaRad: 0.07,
  mostCost: 6,
  mostTracks: 40,
};

/** A line as indices of ridge points, in order. */
export interface RidgeTrack {
  points: number[];
  lengthPx: number;
}

/** The longest first. */
export function ridgeTracks(ridges: CoarseRidges, choice: TrackChoice): RidgeTrack[] {
  const grid = ridgeGrid(ridges);
  const { points, support } = ridges;
  const seen = new Uint8Array(points.count);
  const seeds = Array.from(support.keys()).filter(
    (i) => support[i] >= choice.seedSupportPx && points.strength[i] >= choice.seedStrength,
  );
  seeds.sort((a, b) => points.strength[b] * support[b] - points.strength[a] * support[a]);
  const tracks: RidgeTrack[] = [];
  for (const seed of seeds) {
    if (seen[seed]) continue;
    const track = trackFrom(ridges, grid, seed, choice);
    markSeen(ridges, grid, track, seen);
    if (track.lengthPx >= choice.leastLengthPx) tracks.push(track);
  }
  return tracks.sort((a, b) => b.lengthPx - a.lengthPx).slice(0, choice.mostTracks);
}

/** Both ways from one point. */
export function trackFrom(
  ridges: CoarseRidges,
  grid: RidgeGrid,
  seed: number,
  choice: TrackChoice,
): RidgeTrack {
  const ahead = followRidge(ridges, grid, [seed], 1, choice);
  const whole = followRidge(ridges, grid, ahead.reverse(), -1, choice);
  return { points: whole, lengthPx: lengthOf(ridges, whole) };
}

function lengthOf({ points }: CoarseRidges, track: readonly number[]): number {
  let length = 0;
  for (let i = 1; i < track.length; i++)
    length += Math.hypot(
      points.x[track[i]] - points.x[track[i - 1]],
      points.y[track[i]] - points.y[track[i - 1]],
    );
  return length;
}

function markSeen(ridges: CoarseRidges, grid: RidgeGrid, track: RidgeTrack, seen: Uint8Array): void {
  const { points } = ridges;
  for (const p of track.points) {
    seen[p] = 1;
    pointsWithin(grid, points.x[p], points.y[p], 6, (q) => {
      const alike = points.tangentX[p] * points.tangentX[q] + points.tangentY[p] * points.tangentY[q];
      const [ox, oy] = [points.x[q] - points.x[p], points.y[q] - points.y[p]];
      const aside = Math.abs(ox * points.tangentY[p] - oy * points.tangentX[p]);
      if (Math.abs(alike) > 0.95 && aside < 2) seen[q] = 1;
    });
  }
}

interface Tip {
  x: number;
  y: number;
  hx: number;
  hy: number;
  point: number;
}

/** Goes on from the end of `track`; `sign` is the sense of the seed's tangent while there is but one point. */
function followRidge(
  ridges: CoarseRidges,
  grid: RidgeGrid,
  track: number[],
  sign: number,
  choice: TrackChoice,
): number[] {
  const { points } = ridges;
  const used = new Set(track);
  let length = lengthOf(ridges, track);
  for (;;) {
    const tip = tipOf(ridges, track, sign);
    const next = nextPoint(ridges, grid, tip, length, used, choice);
    if (next < 0) return track;
    length += Math.hypot(points.x[next] - tip.x, points.y[next] - tip.y);
    used.add(next);
    track.push(next);
  }
}

/** Where the line ends and where it would go on: its last stretch, turned on as it has been turning. */
function tipOf({ points }: CoarseRidges, track: readonly number[], sign: number): Tip {
  const point = track[track.length - 1];
  const [x, y] = [points.x[point], points.y[point]];
  if (track.length < 4) {
    const before = track[0];
    const forward =
      track.length > 1
        ? Math.sign(
            (x - points.x[before]) * points.tangentX[point] + (y - points.y[before]) * points.tangentY[point],
          )
        : sign;
    return { x, y, hx: forward * points.tangentX[point], hy: forward * points.tangentY[point], point };
  }
  const back = (steps: number): number => track[Math.max(0, track.length - 1 - steps)];
  const reach = Math.min(6, (track.length - 1) >> 1);
  const [middle, first] = [back(reach), back(2 * reach)];
  const [ax, ay] = [x - points.x[middle], y - points.y[middle]];
  const [bx, by] = [points.x[middle] - points.x[first], points.y[middle] - points.y[first]];
  // Half a chord on, the line has turned by as much again as between the two chords.
  const turn = Math.atan2(bx * ay - by * ax, ax * bx + ay * by);
  const angle = Math.atan2(ay, ax) + Math.max(-0.15, Math.min(0.15, 0.75 * turn));
  return { x, y, hx: Math.cos(angle), hy: Math.sin(angle), point };
}

/** Near by first; the far cone only where nothing near goes on. −1 where the line ends. */
function nextPoint(
  ridges: CoarseRidges,
  grid: RidgeGrid,
  tip: Tip,
  length: number,
  used: ReadonlySet<number>,
  choice: TrackChoice,
): number {
  let best = -1;
  let bestCost = choice.mostCost;
  const offer = (q: number, from: number, to: number, widest: number): void => {
    if (used.has(q)) return;
    const cost = stepCost(ridges, tip, q, from, to, widest, choice);
    if (cost < bestCost) {
      bestCost = cost;
      best = q;
    }
  };
  const { least, plain, most } = choice.stepPx;
  pointsWithin(grid, tip.x, tip.y, plain, (q) => offer(q, least, plain, 0.3));
  if (best >= 0) return best;
  const furthest = Math.min(most, choice.jumpShare * length);
  for (let ahead = plain; ahead < furthest; ahead += 6) {
    pointsWithin(grid, tip.x + tip.hx * ahead, tip.y + tip.hy * ahead, Math.max(3, 0.1 * ahead), (q) =>
      offer(q, plain, furthest, 0.12),
    );
    if (best >= 0) return best;
  }
  return -1;
}

function stepCost(
  { points, colours, costs }: CoarseRidges,
  tip: Tip,
  q: number,
  from: number,
  to: number,
  widest: number,
  choice: TrackChoice,
): number {
  const [dx, dy] = [points.x[q] - tip.x, points.y[q] - tip.y];
  const length = Math.hypot(dx, dy);
  if (length < from || length > to) return Infinity;
  const out = Math.abs(Math.atan2(tip.hx * dy - tip.hy * dx, dx * tip.hx + dy * tip.hy));
  if (out > widest) return Infinity;
  const along = Math.abs(dx * points.tangentX[q] + dy * points.tangentY[q]) / length;
  const into = Math.acos(Math.min(1, along));
  if (into > widest) return Infinity;
  const sigma = choice.turnSigmaRad;
  const faint = 1 / (1 + (points.strength[q] / costs.strengthHalf) ** 2);
  const widen = Math.log(points.scale[tip.point] / points.scale[q]);
  let change = 0;
  for (let c = 0; c < 3; c++) change += (colours[3 * tip.point + c] - colours[3 * q + c]) ** 2;
  return (
    (out * out + into * into) / (sigma * sigma) +
    0.1 * length * (0.2 + faint) +
    (points.polarity[tip.point] !== points.polarity[q] ? costs.polarity : 0) +
    costs.scale * widen * widen +
    0.5 * Math.min(3, change / (3 * costs.colourSpread ** 2))
  );
}

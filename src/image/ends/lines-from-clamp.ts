import { type Camera, cameraBackProject, cameraProject } from '../camera/camera-model.ts';
import type { Point } from '../camera/homography.ts';
import { centrelineOf } from '../trace/centreline.ts';
import { type CoarseRidges, toPicture, toReduced } from '../trace/coarse-path.ts';
import { explorePaths, type StateCost } from '../trace/path-explore.ts';
import { pointsWithin, type RidgeGrid, ridgeGrid } from '../trace/ridge-grid.ts';
import type { EndsKnown } from './ends-known.ts';

/** A smooth line that leaves the clamp and is as long as the blank, in pixels of the picture. */
export interface ClampLine {
  path: Point[];
  cost: number;
  /** Over the reduced picture's pixels. */
  costPerPx: number;
}

/** A path goes on from where it first is long enough to what costs so many times as much; dearer is a jump elsewhere. */
const goneOnCost = 1.35;

/**
 * The cheapest line, and those that end elsewhere and cost at most `rivalCost` times as much: in the order of their costs
 * where each is first long enough, before it goes on.
 */
export function linesFromClamp(
  ridges: CoarseRidges,
  camera: Camera,
  known: EndsKnown,
  rivalCost: number,
  isOut: (point: number) => boolean = () => false,
): ClampLine[] {
  const { points } = ridges;
  const plane = planeOf(ridges, camera);
  const grid = ridgeGrid(ridges);
  const { start, perM } = startsAt(ridges, grid, camera, known.clamp);
  const slackM = 3.5 * known.clamp.sigmaM + 0.01 * known.lengthM + 0.01;
  const reachM = new Float32Array(2 * points.count);
  const costs = new Float32Array(2 * points.count);
  const ends: number[] = [];
  const parent = explorePaths(ridges, grid, start, (state, cost, from) => {
    const [p, q] = [state >> 1, from >> 1];
    if (isOut(p)) return 'leave';
    if (ends.length > 0 && cost > rivalCost * costs[ends[0]] + 30) return 'stop';
    costs[state] = cost;
    reachM[state] =
      from === state ? 0 : reachM[from] + Math.hypot(plane.x[p] - plane.x[q], plane.y[p] - plane.y[q]);
    if (Math.abs(reachM[state] - known.lengthM) < slackM) ends.push(state);
    return reachM[state] > known.lengthM + slackM ? 'leave' : 'expand';
  });
  const apartPx = 2.5 * slackM * perM;
  return apartEnds(ends, points, apartPx).map((end) => {
    const cheap = ends.filter((one) => costs[one] <= goneOnCost * costs[end]);
    const last = goneOn(end, cheap, parent, (state) => Math.abs(reachM[state] - known.lengthM));
    const path = pathTo(last, parent, ridges);
    return { path, cost: costs[last], costPerPx: costs[last] / (known.lengthM * perM) };
  });
}

/** The points beside the last part of lines, to look for others. */
export function pointsBeside(
  ridges: CoarseRidges,
  lines: readonly ClampLine[],
  { lastShare, reachPx }: { lastShare: number; reachPx: number },
): Set<number> {
  const grid = ridgeGrid(ridges);
  const beside = new Set<number>();
  for (const { path } of lines) {
    const last = centrelineOf(path.slice(Math.floor((1 - lastShare) * path.length)), ridges.factor);
    last.x.forEach((x, i) => {
      const at = toReduced({ x, y: last.y[i] }, ridges.factor);
      pointsWithin(grid, at.x, at.y, reachPx, (p) => beside.add(p));
    });
  }
  return beside;
}

/** Every ridge point's place in the marks' plane. */
function planeOf({ points, factor }: CoarseRidges, camera: Camera): { x: Float32Array; y: Float32Array } {
  const plane = { x: new Float32Array(points.count), y: new Float32Array(points.count) };
  for (let i = 0; i < points.count; i++) {
    const at = cameraBackProject(camera, toPicture({ x: points.x[i], y: points.y[i] }, factor));
    plane.x[i] = at.x;
    plane.y[i] = at.y;
  }
  return plane;
}

/** Ridge points about the clamp, the dearer the further from it; and the reduced picture's pixels for a metre there. */
function startsAt(
  { points, factor }: CoarseRidges,
  grid: RidgeGrid,
  camera: Camera,
  { atM: [x, y], sigmaM }: EndsKnown['clamp'],
): { start: StateCost[]; perM: number } {
  const at = toReduced(cameraProject(camera, { x, y }), factor);
  const beside = toReduced(cameraProject(camera, { x: x + 0.01, y }), factor);
  const perM = Math.hypot(beside.x - at.x, beside.y - at.y) / 0.01;
  const sigmaPx = Math.max(2, sigmaM * perM);
  const start: StateCost[] = [];
  pointsWithin(grid, at.x, at.y, 4 * sigmaPx, (p) => {
    const away = Math.hypot(points.x[p] - at.x, points.y[p] - at.y) / sigmaPx;
    if (away > 4) return;
    for (const state of [2 * p, 2 * p + 1]) start.push({ state, cost: 0.25 * away * away });
  });
  return { start, perM };
}

function apartEnds(ends: readonly number[], { x, y }: CoarseRidges['points'], apartPx: number): number[] {
  const most = 5;
  const taken: number[] = [];
  for (const end of ends) {
    if (taken.length === most) break;
    const i = end >> 1;
    if (taken.every((one) => Math.hypot(x[one >> 1] - x[i], y[one >> 1] - y[i]) > apartPx)) taken.push(end);
  }
  return taken;
}

/** Of the states that the path goes on to, the one nearest to the length. */
function goneOn(
  end: number,
  ends: readonly number[],
  parent: Int32Array,
  missM: (state: number) => number,
): number {
  const own = new Set([end]);
  for (const one of ends) if (own.has(parent[one])) own.add(one);
  return [...own].reduce((best, one) => (missM(one) < missM(best) ? one : best));
}

function pathTo(end: number, parent: Int32Array, { points, factor }: CoarseRidges): Point[] {
  const path: Point[] = [];
  for (let state = end; ; state = parent[state]) {
    path.push(toPicture({ x: points.x[state >> 1], y: points.y[state >> 1] }, factor));
    if (parent[state] === state) return path.reverse();
  }
}

/**
 * The middle line of a long thin patch from end to end, with its width.
 *
 * Ends: the pixel farthest (inside the patch) from any start, and the one farthest from that. Between them runs
 * the path that is cheapest when a step costs the more the nearer it is to the outside, so it keeps to the
 * middle.
 */
import { CostHeap } from '../trace/heap.ts';
import { depthOf, type Mask } from './mask.ts';

export interface MiddlePath {
  /** Pixels of the mask, end to end. */
  x: Float64Array;
  y: Float64Array;
  /** Distance along, pixels. */
  along: Float64Array;
  /** Width across, pixels. */
  width: Float64Array;
  /** The longest way from the path to a pixel of the patch, less the path's half-width there: side branches. */
  branchPx: number;
}

export function middlePath(mask: Mask): MiddlePath {
  const depth = depthOf(mask);
  const plain = (): number => 1;
  const start = deepest(depth);
  const first = farthest(spreadFrom(mask, [start], plain).cost);
  const second = farthest(spreadFrom(mask, [first], plain).cost);
  const top = depth[start];
  const central = (i: number): number => 1 + 12 * Math.max(0, top / Math.max(depth[i], 0.5) - 1) ** 1.5;
  const { parent } = spreadFrom(mask, [first], central, second);
  const pixels: number[] = [];
  for (let at = second; ; at = parent[at]) {
    pixels.push(at);
    if (parent[at] === at) break;
  }
  return { ...smoothPath(pixels, mask.width, depth), branchPx: branchLength(mask, pixels, depth) };
}

function deepest(depth: Float32Array): number {
  let best = 0;
  for (let i = 1; i < depth.length; i++) if (depth[i] > depth[best]) best = i;
  return best;
}

function farthest(cost: Float64Array): number {
  let best = 0;
  let most = -1;
  for (let i = 0; i < cost.length; i++) {
    if (cost[i] !== Number.POSITIVE_INFINITY && cost[i] > most) {
      most = cost[i];
      best = i;
    }
  }
  return best;
}

/** Dijkstra inside the mask; a step costs its length times the price of where it ends. */
function spreadFrom(
  mask: Mask,
  starts: readonly number[],
  price: (pixel: number) => number,
  goal = -1,
): { cost: Float64Array; parent: Int32Array } {
  const { width, height, inside } = mask;
  const cost = new Float64Array(width * height).fill(Number.POSITIVE_INFINITY);
  const parent = new Int32Array(width * height).fill(-1);
  const heap = new CostHeap();
  for (const start of starts) {
    cost[start] = 0;
    parent[start] = start;
    heap.push(0, start);
  }
  while (heap.size > 0) {
    const top = heap.pop();
    if (top.cost > cost[top.state]) continue;
    if (top.state === goal) break;
    const x = top.state % width;
    const y = (top.state - x) / width;
    for (let py = Math.max(0, y - 1); py <= Math.min(height - 1, y + 1); py++) {
      for (let px = Math.max(0, x - 1); px <= Math.min(width - 1, x + 1); px++) {
        const next = py * width + px;
        if (!inside[next] || next === top.state) continue;
        const length = px !== x && py !== y ? Math.SQRT2 : 1;
        const total = top.cost + length * price(next);
        if (total < cost[next]) {
          cost[next] = total;
          parent[next] = top.state;
          heap.push(total, next);
        }
      }
    }
  }
  return { cost, parent };
}

/** A running mean takes the stairs out of the pixel path. */
function smoothPath(
  pixels: readonly number[],
  width: number,
  depth: Float32Array,
): Omit<MiddlePath, 'branchPx'> {
  const n = pixels.length;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const along = new Float64Array(n);
  const widths = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const reach = Math.min(3, i, n - 1 - i);
    for (let k = -reach; k <= reach; k++) {
      x[i] += (pixels[i + k] % width) / (2 * reach + 1);
      y[i] += Math.floor(pixels[i + k] / width) / (2 * reach + 1);
      widths[i] = Math.max(widths[i], 2 * depth[pixels[i + k]] - 1);
    }
    if (i > 0) along[i] = along[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
  }
  return { x, y, along, width: widths };
}

function branchLength(mask: Mask, pixels: readonly number[], depth: Float32Array): number {
  const { cost } = spreadFrom(mask, pixels, () => 1);
  const tip = farthest(cost);
  const half = Math.max(...pixels.map((pixel) => depth[pixel]));
  return Math.max(0, cost[tip] - half);
}

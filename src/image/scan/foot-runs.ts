/**
 * Which stretches of a middle line are feet: where the patch is clearly wider than the wire.
 */
import type { MiddlePath } from './middle-path.ts';

export interface Run {
  /** Distances along the path, pixels. */
  from: number;
  to: number;
}

export interface FootRuns {
  wirePx: number;
  footPx: number;
  /** Wide stretches longer than `leastMm`, in order. */
  runs: Run[];
}

/**
 * Wire width: the lower quartile over the middle of the path. Foot width: the upper quartile over both ends.
 * A run may dip below the threshold for `bridgePx` (a notch, a highlight).
 */
export function footRuns(path: MiddlePath, leastPx: number, bridgePx: number): FootRuns {
  const total = path.along[path.along.length - 1];
  const widths = smoothed(path, 0.3 * bridgePx);
  const between = (from: number, to: number): number[] =>
    Array.from(widths).filter((_, i) => path.along[i] >= from * total && path.along[i] <= to * total);
  const wirePx = quantile(between(0.3, 0.7), 0.25);
  const footPx = Math.min(quantile(between(0, 0.3), 0.75), quantile(between(0.7, 1), 0.75));
  const threshold = wirePx + 0.45 * (footPx - wirePx);
  const runs: Run[] = [];
  for (let i = 0; i < path.along.length; i++) {
    if (widths[i] < threshold) continue;
    const at = path.along[i];
    const last = runs[runs.length - 1];
    if (last && at - last.to <= bridgePx) last.to = at;
    else runs.push({ from: at, to: at });
  }
  // A foot narrows to its end: the run reaches from there.
  const first = runs[0];
  const last = runs[runs.length - 1];
  if (first && first.from < 0.25 * total) first.from = 0;
  if (last && last.to > 0.75 * total) last.to = total;
  return { wirePx, footPx, runs: runs.filter((run) => run.to - run.from >= leastPx) };
}

/** Running mean over `reachPx` either way. */
function smoothed(path: MiddlePath, reachPx: number): Float64Array {
  const out = new Float64Array(path.width.length);
  let from = 0;
  let to = 0;
  let sum = 0;
  for (let i = 0; i < out.length; i++) {
    while (to < out.length && path.along[to] <= path.along[i] + reachPx) sum += path.width[to++];
    while (path.along[from] < path.along[i] - reachPx) sum -= path.width[from++];
    out[i] = sum / (to - from);
  }
  return out;
}

function quantile(values: number[], share: number): number {
  const sorted = values.sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}

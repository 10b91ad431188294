/**
 * One sign for what the line does in a ring: a fan stands square on the line, outside the bend, and opens, true to
 * angle, as far as the line turns there. Its outline is the limit.
 */
import type { DrawingFrame } from './drawing-frame.ts';

export interface PlacePx {
  x: number;
  y: number;
}
export interface Fan {
  /** The turn, and the limit's outline: paths from the ring outwards. */
  turn: string;
  limit: string;
  /** Where the figure stands, beyond the fan, and the way that it opens to. */
  label: PlacePx;
  outwardsRad: number;
  isOver: boolean;
}
export interface FanSize {
  /** From the ring to the fan's foot, and the fan's own length. */
  clearPx: number;
  lengthPx: number;
}

export function fanSizeFor(widthPx: number): FanSize {
  const lengthPx = Math.min(58, Math.max(26, widthPx / 17));
  return { clearPx: lengthPx / 6, lengthPx };
}

/** Of the line from one ring over `at` to the next; undefined where it does not turn enough to be seen. */
export function fanAt(
  line: readonly [from: PlacePx, at: PlacePx, to: PlacePx],
  angleRad: number,
  limitRad: number,
  { clearPx, lengthPx }: FanSize,
): Fan | undefined {
  const outwards = outwardsOf(...line);
  if (outwards === undefined || angleRad < leastShownRad) return undefined;
  const [, at] = line;
  const foot = along(at, outwards, clearPx);
  const sector = (openRad: number) => {
    const [a, b] = [outwards - openRad / 2, outwards + openRad / 2].map((way) => along(foot, way, lengthPx));
    const size = lengthPx.toFixed(1);
    return `M${show(foot)}L${show(a)}A${size} ${size} 0 0 1 ${show(b)}Z`;
  };
  return {
    turn: sector(angleRad),
    limit: sector(limitRad),
    label: along(foot, outwards, lengthPx + beyondPx),
    outwardsRad: outwards,
    isOver: angleRad > limitRad,
  };
}
const leastShownRad = 0.004;
export const beyondPx = 11;

/** Direction on the screen away from the side to which the line is bent; undefined for a straight line. */
function outwardsOf(from: PlacePx, at: PlacePx, to: PlacePx): number | undefined {
  const [back, on] = [unit(at, from), unit(at, to)];
  const [x, y] = [back.x + on.x, back.y + on.y];
  return Math.hypot(x, y) < 1e-4 ? undefined : Math.atan2(-y, -x);
}

function unit(from: PlacePx, to: PlacePx): PlacePx {
  const size = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: (to.x - from.x) / size, y: (to.y - from.y) / size };
}

export function along({ x, y }: PlacePx, wayRad: number, px: number): PlacePx {
  return { x: x + px * Math.cos(wayRad), y: y + px * Math.sin(wayRad) };
}

function show({ x, y }: PlacePx): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

export function onScreen({ xM, yM }: { xM: number; yM: number }, frame: DrawingFrame): PlacePx {
  return { x: frame.xPx(xM), y: frame.yPx(yM) };
}

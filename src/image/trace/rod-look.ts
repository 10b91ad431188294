import type { Pixels } from '../pixels.ts';
import { type Centreline, centrelineOf, centrelineSmoothed } from './centreline.ts';
import { followEdges } from './follow-edges.ts';
import { stripAlong, stripSlope } from './strip.ts';
import { halfWidthsAlong, taperVote } from './taper.ts';

/** What a long line of a picture looks like, were it a rod. */
export interface RodLook {
  thickPx: number;
  taper: number;
  thickFirst: boolean;
  even: number;
  seen: number;
  /** Typical edge slope, grey steps per pixel. */
  slope: number;
}

/** Width and edges along a line that is good to a few pixels, on a step of two ridge pixels. */
export function rodLook(pixels: Pixels, line: Centreline, factor: number): RodLook {
  const stepPx = 2 * factor;
  const places = Array.from(line.x, (x, i) => ({ x, y: line.y[i] }));
  const smooth = centrelineSmoothed(centrelineOf(places, stepPx), 80 * factor);
  const slope = stripSlope(stripAlong(pixels, smooth, 18, 0.5), 0.9, 12 / stepPx);
  const widths = {
    reachPx: 4,
    slackPx: 2,
    leastHalfPx: 0.75,
    mostHalfPx: 12,
    stepHalfPx: 0.25,
    swapFactor: 1,
  };
  const taper = taperVote(slope, widths);
  const windows = halfWidthsAlong(slope, widths, 12);
  const even = windows.filter((half, i) => {
    const taken = taper.halfPx[Math.round(((i + 0.5) / 12) * (taper.halfPx.length - 1))];
    return Math.abs(half - taken) <= Math.max(0.5, 0.2 * taken);
  });
  const { weight } = followEdges(slope, taper, {
    reachPx: 4,
    moveCost: 0.6,
    polarityCost: 6,
    astrayCost: 0.2,
    slackPx: 2,
  });
  const ends = [taper.halfPx[0], taper.halfPx[taper.halfPx.length - 1]];
  return {
    thickPx: Math.max(...ends),
    taper: Math.max(...ends) / Math.min(...ends),
    thickFirst: ends[0] >= ends[1],
    even: even.length / windows.length,
    seen: weight.filter((one) => one > 0.3).length / weight.length,
    slope: taper.halfSlope,
  };
}

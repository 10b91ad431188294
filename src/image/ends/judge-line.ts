/** How much speaks against a line's being the blank: what it is like, where it begins and ends, and how it bends. */
import { type Camera, cameraBackProject } from '../camera/camera-model.ts';
import type { Pixels } from '../pixels.ts';
import { centrelineOf, centrelineSmoothed } from '../trace/centreline.ts';
import { rodLook } from '../trace/rod-look.ts';
import type { EndsKnown } from './ends-known.ts';
import type { ClampLine } from './lines-from-clamp.ts';
import { type SlidEnds, slideEnds } from './slide-ends.ts';

/** What counts is in units of half a squared misfit. Judgement, from painted pictures (docs/three-pictures.md says which). */
export interface LineJudgeChoice {
  /** For each e-fold that it is dearer than the cheapest. */
  cost: number;
  unseen: number;
  uneven: number;
  /** Thinner toward the clamp. */
  thickLast: number;
  /** A weight bends a blank down: a standard deviation of what a line may turn up. */
  upRad: number;
  /** No more counts for turning up, nor for where both ends lie. */
  most: number;
  buttUnclear: number;
  goesOn: number;
  /** The butt must show a change across the line that is this many times what is usual beside it. */
  leastChange: number;
}

export const lineJudgeChoice: LineJudgeChoice = {
  cost: 8,
  unseen: 10,
  uneven: 5,
  thickLast: 3,
  upRad: 0.08,
  most: 10,
  buttUnclear: 4,
  goesOn: 6,
  leastChange: 1.2,
};

export interface JudgedLine {
  line: ClampLine;
  slid: SlidEnds;
  against: number;
}

export function judgeLine(
  pixels: Pixels,
  camera: Camera,
  known: EndsKnown,
  line: ClampLine,
  { leastCost, factor }: { leastCost: number; factor: number },
  choice = lineJudgeChoice,
): JudgedLine {
  const slid = slideEnds(pixels, camera, known, line.path, factor);
  const { seen, even, thickFirst, taper } = rodLook(pixels, centrelineOf(line.path, 2), factor);
  const squares = (misses: readonly number[]) => misses.reduce((sum, one) => sum + 0.5 * one * one, 0);
  const against =
    costAgainst(line, leastCost, choice) +
    choice.unseen * (1 - seen) +
    choice.uneven * (1 - even) +
    (thickFirst || taper < 1.2 ? 0 : choice.thickLast) +
    Math.min(choice.most, squares([turnsUpRad(line, camera, factor) / choice.upRad])) +
    Math.min(choice.most, squares([slid.clampMiss, slid.lengthMiss])) +
    (slid.change < choice.leastChange ? choice.buttUnclear : 0) +
    (slid.goesOn ? choice.goesOn : 0);
  return { line, slid, against };
}

export function costAgainst({ cost }: ClampLine, leastCost: number, choice = lineJudgeChoice): number {
  return choice.cost * Math.log(cost / leastCost);
}

/** How far a line turns away from straight down, in the marks' plane. */
export function turnsUpRad({ path }: ClampLine, camera: Camera, factor: number): number {
  const smooth = centrelineSmoothed(centrelineOf(path, 4 * factor), 120 * factor);
  const plane = Array.from(smooth.x, (x, i) => cameraBackProject(camera, { x, y: smooth.y[i] }));
  // directions over chords of eight steps, compared twelve steps on: shorter ones show the path's own steps
  const [chord, apart] = [8, 12];
  const fromDown = plane.slice(chord).map((at, i) => {
    const [x, y] = [at.x - plane[i].x, at.y - plane[i].y];
    return Math.acos(-y / (Math.hypot(x, y) || 1));
  });
  let sum = 0;
  for (let i = apart; i < fromDown.length; i += apart) sum += Math.max(0, fromDown[i] - fromDown[i - apart]);
  return sum;
}

/** What a path through ridge points is weighed by. */
import type { RidgePoints } from './ridge-points.ts';

export interface PathCosts {
  /** Per pixel of length along a perfectly clear ridge. */
  length: number;
  /** Per pixel of length along a ridge at the noise. */
  faint: number;
  /** Strength at which the faintness has halved. */
  strengthHalf: number;
  /** Standard error of a heading on long support, and the part that falls with support^1.5. */
  turnSigmaRad: number;
  turnSupport: number;
  /** Per pixel beyond `stepPx` without a ridge point. */
  gap: number;
  /** With a step at hand no dearer than this, no jump is tried. */
  clearStep: number;
  polarity: number;
  colour: number;
  colourSpread: number;
  scale: number;
  /** Shortest and longest step. */
  stepPx: { least: number; plain: number; most: number };
  /** Widest turn from heading to step, or from step to heading. */
  widestTurnRad: number;
  /** Taps are trusted to about this distance; the cost of a miss grows with its square up to `tapMost`. */
  tapPx: number;
  tapMost: number;
  /** Points with less line behind their heading than this are pivots to nowhere and left out. */
  leastSupportPx: number;
}

export const pathCosts: PathCosts = {
  length: 0.02,
  faint: 0.5,
  strengthHalf: 16,
  turnSigmaRad: 0.02,
  turnSupport: 0.8,
  gap: 0.5,
  clearStep: 1.5,
  polarity: 4,
  colour: 1,
  colourSpread: 25,
  scale: 0.5,
  stepPx: { least: 5, plain: 9, most: 60 },
  widestTurnRad: 0.5,
  tapPx: 3,
  tapMost: 30,
  leastSupportPx: 5,
};

/** The ridges of a picture with all that a path through them is weighed by. */
export interface RidgeInput {
  points: RidgePoints;
  /** Red, green, blue 0..255 at each point, interleaved. */
  colours: Float32Array;
  /** Length of line behind each point's heading. */
  support: Float32Array;
  width: number;
  height: number;
  costs: PathCosts;
}

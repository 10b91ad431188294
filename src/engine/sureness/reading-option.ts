import type { BlankTables } from '../bench/free-rod.ts';
import type { FitRequest } from '../stiffness/request.ts';

export interface OptionsQuestion {
  fit: FitRequest;
  /** Index in `fit.setups` of the one that nobody has touched since; undefined: none stands. */
  standing?: number;
  /** The blank as it is best known: weights are chosen by it. */
  tables: BlankTables;
  /** Height of the clamp above the floor, where it is known. */
  clampHeightM?: number;
}

export interface ReadingOption {
  /** A stretch on two supports, loaded and read at `readFromTipM`; the clamp is not used. */
  supportsFromTipM?: readonly [number, number];
  /** Swings of the bare blank, held at `clampFromTipM`; no loads. */
  swings?: { count: number; seconds: number };
  /** Index of the set-up that stands; left out: the clamp is set anew. */
  standing?: number;
  clampFromTipM: number;
  turnedRad: number;
  /** In this order. */
  loads: { massKg: number; readFromTipM: number[] }[];
  readings: number;
  minutes: number;
}

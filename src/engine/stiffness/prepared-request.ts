/** The request as the fit works on it: traced curves stand as clamps among the clamps. */
import type { DriftMode } from './curve-drift.ts';
import type { FitBlank, FitClampSetup, FitLine, FitSpanSetup, FitTest } from './request.ts';

interface PreparedReading {
  fromTipM: number;
  dropM: number;
  /** The reading is square to this direction; left out: to the nominal one. */
  squareToRad?: number;
  /** Of a place of a curve beside the grain: it was bridged. */
  bridgedM?: number;
}
export interface PreparedTest extends Omit<FitTest, 'readings'> {
  readings: readonly PreparedReading[];
  masses?: readonly { fromTipM: number; massKg: number }[];
  line?: FitLine;
}
export interface PreparedClamp extends Omit<FitClampSetup, 'tests'> {
  tests: readonly PreparedTest[];
  curve?: PreparedCurve;
  /** Set-ups of one word stand in one clamp and share its tilt. */
  clampedAs?: string;
}
/** What only a traced curve has. */
export interface PreparedCurve {
  /** Traced length less what the tape says, and its ±; infinite where the trace does not begin at the hold. */
  excessM: number;
  excessSigmaM: number;
  drifts: readonly DriftMode[];
  /** Where the blank left its hold in this picture, off the mean of the pictures in one clamp. */
  holdOff: { xM: number; yM: number };
  /** Where the curve begins in the picture itself, and the scale there. */
  holdSeen?: { x: number; y: number; mPerPx: number };
  /**
   * The drift that turns the whole frame, and the extent at which its amplitude counts; by how much the readings were
   * turned back already.
   */
  level: { column: number; halfM: number; turnedRad?: number };
  /** Columns of the drifts that are this picture's own among the pictures of its stand. */
  ownColumns: readonly number[];
  /** The pictures of a stand tell their own grain where the request states none. */
  grainUnstated: boolean;
}
export type PreparedSetup = PreparedClamp | FitSpanSetup;
export interface PreparedRequest {
  blank: FitBlank;
  setups: readonly PreparedSetup[];
  driftSigmas: readonly number[];
}

/**
 * The request as the fit works on it: a traced curve becomes a clamp whose readings stand square to the curve,
 * with the drifts that the photograph may hold.
 */

import { type DriftMode, driftDefaults, driftModes, tapSigmaM } from './curve-drift.ts';
import { type CurvePlaces, curvePlaces } from './curve-places.ts';
import type {
  FitBlank,
  FitClampSetup,
  FitCurveSetup,
  FitLine,
  FitRequest,
  FitSpanSetup,
  FitTest,
} from './request.ts';

export interface PreparedReading {
  fromTipM: number;
  dropM: number;
  /** The reading is square to this direction; left out: to the nominal one. */
  squareToRad?: number;
}
export interface PreparedTest extends Omit<FitTest, 'readings'> {
  readings: readonly PreparedReading[];
  masses?: readonly { fromTipM: number; massKg: number }[];
  line?: FitLine;
}
export interface PreparedClamp extends Omit<FitClampSetup, 'tests'> {
  tests: readonly PreparedTest[];
  curve?: PreparedCurve;
}
/** What only a traced curve has. */
export interface PreparedCurve {
  /** Traced length less what the tape says, and its ±; infinite where the trace does not begin at the hold. */
  excessM: number;
  excessSigmaM: number;
  drifts: readonly DriftMode[];
}
export type PreparedSetup = PreparedClamp | FitSpanSetup;
export interface PreparedRequest {
  blank: FitBlank;
  setups: readonly PreparedSetup[];
}

/** The direction at the hold is read off the curve to about this; the level's own error comes on top. */
const directionSigmaRad = 0.05;
/** A hold set by eye or by a level; common practice, no source. */
const setSigmaRad = Math.PI / 180;

export function prepared({ blank, setups }: FitRequest): PreparedRequest {
  return {
    blank,
    setups: setups.map((setup) => (setup.kind === 'curve' ? clampOfCurve(setup, blank.lengthM) : setup)),
  };
}

function clampOfCurve(setup: FitCurveSetup, lengthM: number): PreparedClamp {
  const { clampFromTipM = lengthM, turnedRad, tests } = setup;
  const [curve] = tests;
  const cut = curvePlaces(curve.points, clampFromTipM);
  const { hold, places } = cut;
  const spread = {
    driftSigmaM: curve.driftSigmaM ?? driftDefaults.driftSigmaM,
    levelSigmaRad: curve.levelSigmaRad ?? driftDefaults.levelSigmaRad,
    holdSigmaM: driftDefaults.holdSigmaM + 0.1 * Math.max(0, clampFromTipM - cut.tracedM),
    scaleSigma: driftDefaults.scaleSigma,
  };
  const readings = places.map(({ fromTipM, xM, yM, directionRad }) => ({
    fromTipM,
    dropM: (xM - hold.xM) * Math.sin(directionRad) - (yM - hold.yM) * Math.cos(directionRad),
    squareToRad: directionRad,
  }));
  const { hung, masses, line, localSigmaM = driftDefaults.localSigmaM } = curve;
  return {
    ...holdDirection(setup, cut),
    clampFromTipM,
    turnedRad,
    tests: [{ hung, masses, line, readings, sigmaM: localSigmaM }],
    curve: {
      excessM: cut.tracedM - clampFromTipM,
      excessSigmaM: endsAtHold(cut.tracedM, clampFromTipM)
        ? Math.hypot(tapSigmaM, setup.clampSigmaM ?? 0)
        : Number.POSITIVE_INFINITY,
      drifts: driftModes(cut, spread),
    },
  };
}

/** Else the curve begins behind the hold or in front of it, and its length says nothing. */
export function endsAtHold(tracedM: number, clampFromTipM: number): boolean {
  return Math.abs(tracedM - clampFromTipM) < 0.025 * clampFromTipM;
}

function holdDirection({ nominalAngleRad, tiltSigmaRad }: FitCurveSetup, { hold, mirrored }: CurvePlaces) {
  if (nominalAngleRad === undefined) {
    return { nominalAngleRad: hold.directionRad, tiltSigmaRad: directionSigmaRad };
  }
  const turned = mirrored && Math.cos(nominalAngleRad) < 0 ? Math.PI - nominalAngleRad : nominalAngleRad;
  return { nominalAngleRad: turned, tiltSigmaRad: tiltSigmaRad ?? setSigmaRad };
}

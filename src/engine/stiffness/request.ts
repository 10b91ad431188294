/**
 * What `fit` is asked and what it answers. SI units.
 *
 * Frame: `fromTipM` along the blank, 0 at the tip, `lengthM` at its butt-side end. Angles counter-clockwise;
 * a positive tilt points higher than the nominal angle. A drop is how far the axis hangs below the straight
 * line through the clamp at the nominal angle, square to that line.
 */
import type { ReelPlace, Side } from '../bend/bend-request.ts';
import type { CurvatureRow, MassRow } from '../bend/rod.ts';
import type { Finding, Reason } from '../finding.ts';

export interface FitRequest {
  blank: FitBlank;
  setups: readonly FitSetup[];
}

export interface FitBlank {
  lengthM: number;
  diameters?: readonly { fromTipM: number; outsideM: number }[];
  /** Of the whole blank, tip to `lengthM`. */
  massKg?: number;
  /** Prior standard deviation of the natural curvature; 0: straight. */
  sweepSigmaPerM?: number;
  /** Sections as assembled (they overlap in ferrules), instead of or beside one mass. */
  sections?: readonly FitSection[];
  /**
   * Where the blank is doubled, with how many times stiffer than beside it where the builder states it. An empty list
   * says that it is doubled nowhere; left out, and no sections given, it is not known.
   */
  stiffZones?: readonly { fromTipM: number; toTipM: number; ratio?: number }[];
  /** Swings of the bare blank counted by hand, held at `clampFromTipM`; left out: at `lengthM`. */
  swings?: readonly { clampFromTipM?: number; hz: number; sigmaHz: number }[];
  /** What measured blanks of its series say beforehand, in place of what its diameters would. */
  series?: SeriesPrior;
}
/** Of ln(EI / 1 N·m²) at the 81 fine rows, which stand at the same shares of the length on every blank. */
export interface SeriesPrior {
  mean: readonly number[];
  /** 81 × 81: how unsure the series' mean is. */
  shared: readonly number[];
  /** 81 × 81: how its blanks differ. */
  between: readonly number[];
}
export interface FitSection {
  fromTipM: number;
  toTipM: number;
  massKg?: number;
  balanceFromTipM?: number;
}

export type FitSetup = FitClampSetup | FitSpanSetup | FitCurveSetup;

export interface FitClampSetup {
  kind?: 'clamp';
  /** The axis at the clamp, meant to stand this far above the horizontal. */
  nominalAngleRad: number;
  tiltSigmaRad?: number;
  /** Left out: at `lengthM`. */
  clampFromTipM?: number;
  /** The blank's rotation about its own axis; the natural curvature turns with it. */
  turnedRad?: number;
  tests: readonly FitTest[];
  /** Flags whose stations were measured a second time, from the clamp along the blank. */
  flagChecks?: readonly FlagCheck[];
}
export interface FlagCheck {
  /** The station that its readings state. */
  fromTipM: number;
  fromClampM: number;
}
export interface FitTest {
  hung?: readonly { fromTipM: number; massKg: number }[];
  readings: readonly { fromTipM: number; dropM: number }[];
  sigmaM?: number;
}

/** On two supports; the sag of the loaded point below the line through the supported ones. */
export interface FitSpanSetup {
  kind: 'span';
  supportsFromTipM: readonly [number, number];
  loadFromTipM: number;
  turnedRad?: number;
  tests: readonly { massKg: number; sagM: number; sigmaM?: number }[];
}

/**
 * The bent blank as one photograph shows it: places along it from hold to tip, in a plane frame whose y points
 * up. Where the frame's origin lies, how level it is and how true its scale are unknowns with the ± stated.
 */
export interface FitCurveSetup {
  kind: 'curve';
  /** Where the blank leaves its hold. Left out: at `lengthM`. */
  clampFromTipM?: number;
  /** ± of that distance; left out, a tap's 5 mm. */
  clampSigmaM?: number;
  /** The axis at the hold above the horizontal, where the builder set it. Left out: as the curve shows it. */
  nominalAngleRad?: number;
  tiltSigmaRad?: number;
  turnedRad?: number;
  /**
   * Pictures of one name were taken by one camera from one place with the same marks: what marks, scale, level and
   * lens got wrong is the same field over the wall for all of them, and with the same hold the clamp's tilt too.
   */
  shared?: string;
  tests: readonly [FitCurve];
}
export interface FitCurve {
  hung?: readonly { fromTipM: number; massKg: number }[];
  /** What rides on the rod beside it: guides, thread. */
  masses?: readonly { fromTipM: number; massKg: number }[];
  /** The taped-up rod: the line through its rings pulls too. */
  line?: FitLine;
  /** From the hold to the tip, at least 8; as `trace` answers them. */
  points: readonly FitCurvePoint[];
  /** Standard deviations: unevenness from place to place, smooth drift across the picture, the frame's level. */
  localSigmaM?: number;
  driftSigmaM?: number;
  levelSigmaRad?: number;
}
export interface FitCurvePoint {
  xM: number;
  yM: number;
  /** Standard error square to the curve, marks and lens included. */
  sigmaM?: number;
  /** Where it was seen: tells whether the camera stood still between pictures of one stand. */
  px?: readonly [number, number];
}
export interface FitLine {
  tensionN: number;
  /** Direction in which the line leaves the tip-top; straight down is -π/2. */
  pullAngleRad: number;
  /** Tip-top first, at 0; heights from the axis. */
  rings: readonly { fromTipM: number; ringHeightM: number }[];
  side: Side;
  reel: ReelPlace;
}

export interface StiffnessBandRow {
  fromTipM: number;
  EINm2: number;
  /** 95 % band. */
  lowNm2: number;
  highNm2: number;
}

export interface FitSolved {
  status: 'converged' | 'not-converged';
  /** Why the status is not 'converged'. */
  reason?: Reason;
  /** Tip first, 81 rows. */
  stiffness: StiffnessBandRow[];
  massPerLength: MassRow[];
  /** In the plane of `turnedRad` 0, positive bending the tip up. */
  restCurvature: CurvatureRow[];
  /** Per set-up, true minus nominal; 0 for a span; for a curve less its own direction at the hold. */
  tiltRad: number[];
  /** Of the readings that were used. */
  residualRmsM: number;
  /** Readings that do not belong, and what the answer lacks. */
  findings: Finding[];
  iterations: number;
}
interface FitRefused {
  status: 'refused';
  findings: Finding[];
}
export type FitAnswer = FitSolved | FitRefused;

/**
 * What was measured on the bench, in SI, sections from the tip down.
 *
 * Frame: a station `fromTipM` is a distance along the assembled blank from its tip, which is the datum.
 * `fromOwnTipM` is a distance along one section from its own tip-side end. Ids are the rows the values came
 * from, so that a finding can be shown where the value stands.
 */
import type { LineSide } from './line-side.ts';
import type { Material } from './materials.ts';

export type JointKind = 'sleeve' | 'spigot' | 'put-in' | 'put-over';

export interface Bench {
  material: Material;
  /** The builder's own limits of surface strain; left out, the material's default. */
  strainCautionPercent?: number;
  strainStopPercent?: number;
  /** The assembled blank on the scale, where it was weighed whole. */
  massKg?: number;
  /** The builder's word that the ferrules are wrapped or tightly bound. */
  ferrulesBound: boolean;
  sections: Section[];
  setups: Setup[];
  /** Swings of the bare blank, counted by hand; left out: held at the front of the grip. */
  swings?: BareSwing[];
  /** Photographs of the bare blank, bent. */
  curves?: CurveSetup[];
  handle: Handle;
  /** How stiff the blank is in twist, as far as the builder knows. */
  twist?: BenchTwist;
}

export interface BenchTwist {
  /** GJ over EI, where he states it. */
  share?: number;
  /** A bar across the blank, a weight at its end: left out where nothing was read. */
  test?: {
    barFromTipM: number;
    /** Left out: the front of the grip. */
    clampFromTipM?: number;
    readings: { id: string; massKg: number; armM: number; leftRad: number; rightRad: number }[];
  };
}

export interface Section {
  id: string;
  name: string;
  lengthM: number;
  massKg?: number;
  balanceFromOwnTipM?: number;
  diameters: Diameter[];
  /** Undefined until the builder has chosen. */
  lineSide?: LineSide;
  /** The joint at this section's butt end; none on the lowest section. */
  joint?: Joint;
}

export interface Diameter {
  id: string;
  fromOwnTipM: number;
  outsideM: number;
}

export interface Joint {
  kind: JointKind;
  /** Insertion depth when seated; 0 for a spigot. */
  overlapM: number;
  /** Visible gap of a seated spigot, and the length of its plug; 0 for the other kinds. */
  gapM: number;
  plugM: number;
  /** How many times stiffer the zone is than the blank beside it, where the builder states it. */
  stiffnessRatio?: number;
}

export type Setup = ClampSetup | SpanSetup;
/** Which line of the blank a drop was read at. The reference always passes through the axis at the clamp. */
export type Edge = 'axis' | 'upper' | 'lower';

export interface ClampSetup {
  kind: 'clamp';
  id: string;
  name: string;
  /** Read on this day, in the builder's words. */
  day?: string;
  /** The axis at the clamp, meant to stand this far above the horizontal. */
  nominalAngleRad: number;
  clampFromTipM: number;
  clampHeightM?: number;
  /** The blank's rotation about its own axis. */
  turnedRad: number;
  edge: Edge;
  sigmaM: number;
  tiltSigmaRad: number;
  tests: ClampTest[];
  /** Flags measured once more, from the clamp. */
  flagChecks?: FlagCheck[];
}
export interface FlagCheck {
  id: string;
  fromTipM: number;
  fromClampM: number;
}
export interface ClampTest {
  id: string;
  hungKg: number;
  hungFromTipM: number;
  readings: Reading[];
}
export interface Reading {
  id: string;
  fromTipM: number;
  /** Below the straight line through the clamp at the nominal angle, square to it; of the edge that was read. */
  dropM: number;
}

/** The blank on two supports, sag read at the load. */
export interface SpanSetup {
  kind: 'span';
  id: string;
  name: string;
  day?: string;
  supportTipSideM: number;
  supportButtSideM: number;
  loadFromTipM: number;
  sigmaM: number;
  tests: { id: string; hungKg: number; sagM: number }[];
}

export interface BareSwing {
  id: string;
  clampFromTipM?: number;
  counted: number;
  seconds: number;
}

/** The bare blank's curve under a weight at its tip, read from a photograph, from the hold to the tip. */
export interface CurveSetup {
  id: string;
  day?: string;
  hungKg: number;
  /** Left out: the blank leaves its hold where the curve begins. */
  clampFromTipM?: number;
  nominalAngleRad?: number;
  /** Pictures of one name share camera, marks and wall. */
  shared?: string;
  points: CurvePlaceSeen[];
  /** Standard error of the smooth part: marks and lens. */
  driftSigmaM?: number;
}
export interface CurvePlaceSeen {
  xM: number;
  yM: number;
  /** Of pictures that share a stand: standard error, and where in the picture. */
  sigmaM?: number;
  px?: readonly [number, number];
}

export interface Handle {
  /** Butt end of the blank to the front of the grip. */
  gripFrontFromButtM: number;
  /** Where the line leaves the reel: from the butt end, and off the axis to the guides' side. */
  reelFromButtM: number;
  reelOffsetM: number;
  /** Middles of the hands from the butt end, where it is held with both. */
  hands?: { upperFromButtM: number; lowerFromButtM: number };
}

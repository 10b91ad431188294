/**
 * What the builder chose for the layout, with common practice filled in where he chose nothing; SI units,
 * guides and marks from the tip down.
 */
import type { Side } from '../bend/bend.ts';
import type { Finding } from '../finding.ts';
import type { Guide } from '../kinds/guides.ts';
import type { RodKind } from '../kinds/rod-kinds.ts';
import type { LayoutLimits } from '../layout/ladder-request.ts';
import type { Intervals } from '../layout/layout-request.ts';
import type { FrictionRange } from '../layout/real-line.ts';
import type { Spiral } from '../space/spiral.ts';
import type { FanLimits } from '../spool/first-ring.ts';
import type { TapeStep } from '../units/tape-step.ts';
import type { GuideFeet, WrapChoices } from '../wraps/wrap-choices.ts';

export interface Choices {
  title: string;
  rodKind: RodKind;
  lineWeight: string;
  demo: boolean;
  tipTop: Guide;
  /** The stripping guide last. */
  guides: ChosenGuide[];
  start: Start;
  /** Weights of the load ladder; left out: the default that follows the blank's power. */
  ladderKg?: number[];
  loadBy: LoadBy;
  /** Keeps the line just taut where the weight is tied to the tip. */
  tautLineKg: number;
  buttAngleRad: number;
  side: Side;
  /** The line goes round from the top at the reel to the guides under the rod; left out: all stand on `side`. */
  spiral?: ChosenSpiral;
  intervals: Intervals;
  limits: Partial<LayoutLimits>;
  /** Of the line on the rings. */
  friction: FrictionRange;
  /** The builder's own clear distance beside ferrules; left out: the common ones. */
  ferruleClearM?: number;
  tapeStep: TapeStep;
  dress: DressChoices;
  /** Of rods that throw a weight; a fly rod has none. */
  line?: LineChoices;
}

/** How the line leaves the reel, and what it is fished with. */
export interface LineChoices {
  testKg?: number;
  /** As set, or usual for the test. */
  dragKg?: number;
  lureKg: { least?: number; most?: number };
  reel: ReelOfLine;
  gripDiameterM: number;
  /** Of the line off the reel. */
  limits: FanLimits;
  /** The thickest knot that must pass. */
  knotM?: number;
}
export type ReelOfLine =
  | {
      kind: 'fixed spool';
      /** Undefined until it was measured: then there is no fan. */
      lipDiameterM?: number;
      tiltRad: number;
      /** Where the tilt is from. */
      tiltIs: 'sighted' | 'typed' | 'typical';
      /** Of a sighted one. */
      tiltSigmaRad?: number;
    }
  | { kind: 'multiplier'; windWidthM?: number };

/** How the rod is wrapped and coated: what thread and finish weigh and stiffen. */
export interface DressChoices {
  wraps: WrapChoices;
  /** One for every guide. */
  feet: readonly GuideFeet[];
  coatThicknessM: number;
  coats: number;
  /** Left out: as common. */
  footHeightM?: number;
}

type ChosenSpiral = Required<Spiral>;

/** Weight through the line, or tied to the tip with the line just taut. */
export type LoadBy = 'line' | 'tied';

export interface ChosenGuide extends Guide {
  /** Row of the record; left out for a guide that stands for common practice. */
  id?: string;
  /** The builder's own mark. */
  stationM?: number;
  /** His own place of its foot round the blank, from the top towards the side that the spiral goes. */
  fromTopRad?: number;
  /** How far its ring's middle stands beside its foot, towards that side. */
  ringBesideM?: number;
  /** Clear opening; undefined for a size that says nothing of it. */
  insideM?: number;
  pinned: boolean;
}

export type Start =
  | { kind: 'rule'; count: number; firstFromTipM: number; strippingFromTipM: number }
  /** A chart, or the builder's own list. */
  | { kind: 'list'; words: 'chart' | 'own'; fromTipM: number[] };

/** Left out by the builder and filled in; shown, so that nothing is assumed in silence. Its path takes his own. */
export type Assumption = Finding;

export const choiceDefaults = {
  /** Butt 45° up, weight straight down: the common load test. */
  buttAngleRad: Math.PI / 4,
  tautLineKg: 0.005,
  /** 0, 60, 120 and 180° from the top, the stripping guide at 0 (common practice, no source). */
  spiral: { by: 'right', onTop: 1, transitions: 2 } satisfies ChosenSpiral,
} as const;

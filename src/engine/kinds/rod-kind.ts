/** What a kind of rod says of itself. */
import type { GuideKind } from './guide-kinds.ts';

export interface RodInBrief {
  /** As the builder writes it: `5`, `#5-6`, `WF8F`. */
  lineWeight: string;
  blankLengthM: number;
}
/** From the butt end; `reelOffsetM` off the blank's axis, on the reel's side. */
export interface HandlePlaces {
  gripFrontFromButtM: number;
  reelFromButtM: number;
  reelOffsetM: number;
}
export type HandlePartName =
  | 'fighting butt'
  | 'reel seat'
  | 'trigger seat'
  | 'grip'
  | 'rear grip'
  | 'foregrip'
  | 'second grip';

export interface GuideChoice {
  kind: GuideKind;
  /** From the tip down. */
  sizes: readonly string[];
}
export interface RodKindDeclaration {
  id: string;
  /** As it is called at the bench. */
  name: string;
  /** Cast with a fly line, which has a mass standard. */
  flyLine: boolean;
  /** Cast and fought with both hands on the handle. */
  twoHands?: true;
  /** Where the rings stand on the straight rod. */
  side: 'under' | 'over';
  /** The first guides ahead of the reel turn the line from the top to that side. */
  spiral?: true;
  reel: 'fly' | 'fixed spool' | 'multiplier';
  handle: {
    /** From the butt end. */
    parts: readonly HandlePartName[];
    places(blankLengthM: number): HandlePlaces;
  };
  guides: {
    /** Shared out evenly over all places but those of `butt`. */
    running(rod: RodInBrief): GuideChoice;
    /** One each, the last one the stripping or butt guide. */
    butt(rod: RodInBrief): GuideChoice;
    tipTopSize: string;
    /** The tip-top is not counted. */
    count(blankLengthM: number): number;
  };
  /** Usual limits where they are not those of every rod (layout/layout-defaults.ts). */
  limits?: {
    gapM?: number;
    /** In the first guide from the reel; left out: its line angle does not count. */
    firstLineAngleRad?: number;
  };
  start: {
    firstFromTipM(blankLengthM: number): number;
    /** Butt end to the last guide. */
    strippingFromButtM(blankLengthM: number, handle: HandlePlaces): number;
  };
}

/** What a layout is read under: rod, guides, reel, loads and the builder's limits. */
import type { ReelPlace, Side } from '../bend/bend.ts';
import type { Loading } from '../bend/equilibrium.ts';
import type { Rod, RodTables } from '../bend/rod.ts';

export interface LadderLoad {
  tensionN: number;
  /** Direction towards the far point that the line leaves the tip-top to. */
  pullAngleRad: number;
  /** A weight tied to the tip in the same direction, beside the line's tension; 0 if left out. */
  tiedN?: number;
}

export interface LayoutLimits {
  lineAngleRad: number;
  gapM: number;
  extraBendPerM: number;
}

/** Arrays run from the tip down; `count` includes the stripping guide and not the tip-top. */
export interface GuideSet {
  count: number;
  ringHeightsM: readonly number[];
  massesKg?: readonly number[];
  side: Side;
}

export interface TipTop {
  ringHeightM: number;
  massKg?: number;
}

export interface LadderRequest {
  rod: Rod;
  buttAngleRad: number;
  reel: ReelPlace;
  guides: GuideSet;
  tipTop: TipTop;
  ladder: readonly LadderLoad[];
  limits: LayoutLimits;
}

/** What does not change while guides move. */
export interface Ladder {
  readonly request: LadderRequest;
  readonly rod: RodTables;
  readonly loadings: readonly Loading[];
  /** Elements on the rod, about. */
  readonly resolution: number;
}

/** What a layout is read under: rod, guides, reel, loads and the builder's limits. */
import type { ReelPlace, Side } from '../bend/bend.ts';
import type { BlankContact } from '../bend/bend-request.ts';
import type { Mesh, PointMass } from '../bend/mesh.ts';
import type { Rod, RodTables } from '../bend/rod.ts';
import type { SpaceCurvatureRow, TorsionRow } from '../space/space-request.ts';
import type { LayoutLimits } from './criteria.ts';
import type { LoadBend } from './load-bend.ts';

export type { LayoutLimits };

export interface LadderLoad {
  tensionN: number;
  /** Direction towards the far point that the line leaves the tip-top to. */
  pullAngleRad: number;
  /** The pull turned out of the plane of the rod, positive to the right seen from behind the butt. */
  pullSideRad?: number;
  /** A weight tied to the tip in the same direction, beside the line's tension; 0 if left out. */
  tiedN?: number;
}

/** Arrays run from the tip down; `count` includes the stripping guide and not the tip-top. */
export interface GuideSet {
  count: number;
  ringHeightsM: readonly number[];
  massesKg?: readonly number[];
  /** The line's friction on each as a share of that on a ring; left out: 1. No layout is placed by it. */
  frictionShares?: readonly number[];
  side: Side;
  /** Where each ring stands round the rod (space/space-request.ts), in place of `side`. */
  aroundRad?: readonly number[];
}

interface TipTop {
  ringHeightM: number;
  massKg?: number;
  /** Left out: as the guide next to it. */
  aroundRad?: number;
}

/** `torsion`, or the request's share of EI, is needed as soon as something leaves the plane of the rod. */
export interface LadderRod extends Rod {
  torsion?: readonly TorsionRow[];
  restCurvature?: readonly SpaceCurvatureRow[];
}

export interface LadderRequest {
  rod: LadderRod;
  /** GJ as a share of EI, whatever blank stands in: where the rod has no torsion of its own. */
  torsionShare?: number;
  buttAngleRad: number;
  /** The whole rod turned about the butt's axis: a ring under moves to the right. */
  rollRad?: number;
  /** `aroundRad` left out: as the stripping guide. */
  reel: ReelPlace & { aroundRad?: number };
  guides: GuideSet;
  tipTop: TipTop;
  /** With guides on top: how deep the line would cut into the blank counts too, where `limits` hold its limit. */
  contact?: BlankContact;
  ladder: readonly LadderLoad[];
  limits: LayoutLimits;
}

/** What does not change while guides move. */
export interface Ladder {
  readonly request: LadderRequest;
  readonly rod: RodTables;
  /** A mesh for guides at these stations, the tip-top's included; `elementsPerPart` keeps its shape. */
  meshFor(
    fromTipM: readonly number[],
    masses: readonly PointMass[],
    elementsPerPart?: readonly number[],
  ): Mesh;
  bendUnder(load: number, mesh: Mesh): LoadBend;
}

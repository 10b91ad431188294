/** What is asked of a bend, and the load in the solver's terms. Frame and signs: bend.ts. */
import type { LineThroughRings, Loading } from './equilibrium.ts';
import type { LineFriction } from './friction.ts';
import type { PointMass } from './mesh.ts';
import type { Rod } from './rod.ts';

export type Side = 'under' | 'over';

export interface GuideOnRod {
  fromTipM: number;
  /** Distance of the ring's centre from the blank's axis. */
  ringHeightM: number;
  side: Side;
}
/** Where the line leaves the reel: along the butt axis from the origin, and off it to the guides' side. */
export interface ReelPlace {
  alongM: number;
  offsetM: number;
}
export interface LinePull {
  tensionN: number;
  /** Direction towards the far point that the line leaves the tip-top to. */
  pullAngleRad: number;
}
export interface BendLoad {
  line?: LinePull;
  /** Dead force at the tip, on the axis. */
  tip?: { xN: number; yN: number };
}
export interface BendRequest {
  rod: Rod;
  buttAngleRad: number;
  masses?: readonly PointMass[];
  /** Tip-top first, at 0, then towards the butt. */
  guides?: readonly GuideOnRod[];
  reel?: ReelPlace;
  load: BendLoad;
  /** Left out: the line runs freely. */
  friction?: LineFriction;
  /** Left out: the line passes through the blank where it meets it. */
  contact?: BlankContact;
  /** Each span says how deep its straight line would cut into this blank; nothing is bent by it. */
  depthInto?: BlankContact;
}
/** Lets the line lie on the blank; `diameters` ascend in fromTipM, linear between rows, constant outside. */
export interface BlankContact {
  diameters: readonly { fromTipM: number; outsideM: number }[];
}

/** The load in the solver's terms; a line needs at least one ring and a reel. */
export function loadingOf(request: Omit<BendRequest, 'rod' | 'masses'>): Loading {
  const { line: pull, tip } = request.load;
  return {
    line: pull ? lineOf(request, pull) : undefined,
    tipXN: tip?.xN ?? 0,
    tipYN: tip?.yN ?? 0,
  };
}

function lineOf(request: Omit<BendRequest, 'rod' | 'masses'>, pull: LinePull): LineThroughRings {
  const guides = request.guides ?? [];
  if (guides.length === 0 || !request.reel) throw new Error('a line needs guides and a reel');
  const { alongM, offsetM } = request.reel;
  const c = Math.cos(request.buttAngleRad);
  const s = Math.sin(request.buttAngleRad);
  const off = sideSign(guides[0].side) * offsetM;
  return {
    ringOffsetM: Float64Array.from(guides, (guide) => sideSign(guide.side) * guide.ringHeightM),
    reelXM: alongM * c - off * s,
    reelYM: alongM * s + off * c,
    spanTensionN: new Float64Array(guides.length).fill(pull.tensionN),
    pullN: pull.tensionN,
    pullAngleRad: pull.pullAngleRad,
  };
}

/** +1 where the ring stands on the left normal of the axis (over a level rod that points along +x). */
export function sideSign(side: Side): 1 | -1 {
  return side === 'over' ? 1 : -1;
}

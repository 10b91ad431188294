/** What is asked of a bend in space, and the load in the solver's terms. Frame and signs: bend-in-space.ts. */
import type { BlankContact } from '../bend/bend-request.ts';
import type { LineFriction } from '../bend/friction.ts';
import type { PointMass } from '../bend/mesh.ts';
import { type CurvatureRow, type Rod, rodTables } from '../bend/rod.ts';
import { piecewiseLinear } from '../numerics/piecewise-linear.ts';
import type { SpaceTables } from './mesh-in-space.ts';
import type { SpaceLine, SpaceLoading } from './state.ts';
import { product, turnAbout } from './turn.ts';

export interface TorsionRow {
  fromTipM: number;
  GJNm2: number;
}
/** `perM` bends the tip up, `sidePerM` to the right, before the rod is rolled. */
export interface SpaceCurvatureRow extends CurvatureRow {
  sidePerM?: number;
}
export interface SpaceRod extends Omit<Rod, 'restCurvature'> {
  torsion: readonly TorsionRow[];
  restCurvature?: readonly SpaceCurvatureRow[];
}
export interface GuideRound {
  fromTipM: number;
  ringHeightM: number;
  /** Where the ring stands round the straight rod: 0 under, +π/2 right seen from behind the butt, π over. */
  aroundRad: number;
}
export interface SpaceReel {
  alongM: number;
  offsetM: number;
  aroundRad: number;
}
export interface SpaceLoad {
  line?: { tensionN: number; pullAngleRad: number; pullSideRad?: number };
  tip?: { xN: number; yN: number; zN?: number };
}
export interface SpaceRequest {
  rod: SpaceRod;
  buttAngleRad: number;
  /** The whole rod, rings and reel, turned about the butt's axis: a ring under moves to the right. */
  rollRad?: number;
  masses?: readonly PointMass[];
  guides?: readonly GuideRound[];
  reel?: SpaceReel;
  load: SpaceLoad;
  /** Left out: the line runs freely. */
  friction?: LineFriction;
  /** Left out: the line passes through the blank where it meets it. */
  contact?: BlankContact;
}

export function spaceTables(rod: SpaceRod): SpaceTables {
  const { torsion, restCurvature = [] } = rod;
  const sides = restCurvature.some(({ sidePerM = 0 }) => sidePerM !== 0);
  return {
    ...rodTables(rod),
    torsion: piecewiseLinear(
      torsion.map((row) => row.fromTipM),
      torsion.map((row) => row.GJNm2),
    ),
    sideRest: sides
      ? piecewiseLinear(
          restCurvature.map((row) => row.fromTipM),
          restCurvature.map((row) => row.sidePerM ?? 0),
        )
      : undefined,
  };
}

export function spaceLoadingOf(
  request: Omit<SpaceRequest, 'rod' | 'masses' | 'contact' | 'friction'>,
): SpaceLoading {
  const { tip } = request.load;
  return {
    line: spaceLineOf(request),
    tipN: [tip?.xN ?? 0, tip?.yN ?? 0, tip?.zN ?? 0],
    clamp: clampTurn(request.buttAngleRad, request.rollRad ?? 0),
  };
}

/** d1 up, d2 right, t along the butt's axis, then rolled: a ring under moves to the right. */
export function clampTurn(buttAngleRad: number, rollRad: number): [number, number, number, number] {
  // (d1, d2, t) = (y, z, x) at angle 0: a third of a turn about (1, 1, 1)
  const level: [number, number, number, number] = [0.5, 0.5, 0.5, 0.5];
  return product(product(turnAbout(0, 0, 1, buttAngleRad), level), turnAbout(0, 0, 1, -rollRad));
}

/** Across the blank in its own axes (d1, d2): the unit vector to where a ring stands. */
export function around(aroundRad: number): [number, number] {
  return [-Math.cos(aroundRad), Math.sin(aroundRad)];
}

/** A far pull, turned out of the plane of the rod to the right. */
export function pullDirection(pullAngleRad: number, pullSideRad = 0): [number, number, number] {
  const inPlane = Math.cos(pullSideRad);
  return [inPlane * Math.cos(pullAngleRad), inPlane * Math.sin(pullAngleRad), Math.sin(pullSideRad)];
}

function spaceLineOf({
  load,
  guides = [],
  reel,
  buttAngleRad,
  rollRad = 0,
}: Omit<SpaceRequest, 'rod' | 'masses' | 'contact' | 'friction'>): SpaceLine | undefined {
  if (!load.line) return undefined;
  if (guides.length === 0 || !reel) throw new Error('a line needs guides and a reel');
  const [up, right] = around(reel.aroundRad + rollRad).map((part) => part * reel.offsetM);
  const [c, s] = [Math.cos(buttAngleRad), Math.sin(buttAngleRad)];
  return {
    ringOffsetM: Float64Array.from(
      guides.flatMap(({ aroundRad, ringHeightM }) => around(aroundRad).map((part) => part * ringHeightM)),
    ),
    ringHeightM: Float64Array.from(guides, (guide) => guide.ringHeightM),
    ringAroundRad: Float64Array.from(guides, (guide) => guide.aroundRad),
    reelM: [reel.alongM * c - up * s, reel.alongM * s + up * c, right],
    pullN: load.line.tensionN,
    spanTensionN: new Float64Array(guides.length).fill(load.line.tensionN),
    pull: pullDirection(load.line.pullAngleRad, load.line.pullSideRad),
  };
}

/**
 * What the hand feels of the guides' place round the rod: torque about the butt's axis and twist of the tip, for guides
 * on top, under and in a spiral side by side; pulled straight down, 15° sideways, and with the rod rolled by 10°.
 * Not a promise that a rod will or will not roll over.
 */
import type { PointMass } from '../bend/mesh.ts';
import { bendInSpace, type GuideRound, type SpaceRequest, type SpaceRod } from '../space/bend-in-space.ts';
import type { SpaceAnswer } from '../space/space-answer.ts';
import { spaceLoadingOf } from '../space/space-request.ts';
import { type Spiral, spiralAngles } from '../space/spiral.ts';

export type Arrangement = 'on-top' | 'under' | 'spiral';
export type Handling = 'straight' | 'sideways' | 'rolled';

export interface HandQuestion {
  rod: SpaceRod;
  buttAngleRad: number;
  masses?: readonly PointMass[];
  /** Tip-top first, at 0. */
  guides: readonly { fromTipM: number; ringHeightM: number }[];
  reel: { alongM: number; offsetM: number };
  loads: readonly { tensionN: number; pullAngleRad: number }[];
  /** Left out: three transition guides, to the right. */
  spiral?: Spiral;
  /** Where the rings of the spiral stand instead, from the tip down without the tip-top. */
  aroundRad?: readonly number[];
}
export interface HandReading {
  arrangement: Arrangement;
  handling: Handling;
  /** Row of `loads`. */
  load: number;
  status: SpaceAnswer['status'];
  /** What the hand gives rod and reel, positive turning a ring from under to the right. */
  handTorqueNm: number;
  tipTwistRad: number;
  stable: boolean;
}

export const handlings = { sidewaysRad: Math.PI / 12, rolledRad: Math.PI / 18 };
/** Elements enough for a torque to a hundredth of what a hand can tell. */
const handMesh = { resolution: 120 };
const usualSpiral: Spiral = { transitions: 3 };

export function torqueInHand(question: HandQuestion): HandReading[] {
  return (['on-top', 'under', 'spiral'] as const).flatMap((arrangement) =>
    (['straight', 'sideways', 'rolled'] as const).flatMap((handling) =>
      question.loads.map((_, load) => readHand(question, arrangement, handling, load)),
    ),
  );
}

function readHand(
  question: HandQuestion,
  arrangement: Arrangement,
  handling: Handling,
  load: number,
): HandReading {
  const request = handRequest(question, arrangement, handling, load);
  const answer = bendInSpace(request, handMesh);
  return {
    arrangement,
    handling,
    load,
    status: answer.status,
    handTorqueNm: handTorqueNm(request, answer),
    tipTwistRad: answer.points[0].twistRad,
    stable: answer.stable,
  };
}

/** What the hand gives rod and reel about the butt's axis: the clamp's torque, and what holds the reel. */
export function handTorqueNm(request: SpaceRequest, answer: SpaceAnswer): number {
  return answer.gripTorqueNm - reelTorque(request, answer);
}

function handRequest(
  { loads, spiral = usualSpiral, guides, reel, aroundRad, ...rest }: HandQuestion,
  arrangement: Arrangement,
  handling: Handling,
  load: number,
): SpaceRequest {
  const proposed = aroundRod(arrangement, guides.length - 1, spiral);
  const angles = arrangement === 'spiral' && aroundRad ? [0, ...aroundRad] : proposed;
  const { tensionN, pullAngleRad } = loads[load];
  return {
    ...rest,
    rollRad: handling === 'rolled' ? handlings.rolledRad : 0,
    guides: guides.map((guide, i): GuideRound => ({ ...guide, aroundRad: angles[i] })),
    reel: { ...reel, aroundRad: arrangement === 'under' ? 0 : Math.PI },
    load: {
      line: {
        tensionN,
        pullAngleRad,
        pullSideRad: handling === 'sideways' ? handlings.sidewaysRad : 0,
      },
    },
  };
}

/** The tip-top and the guides, from the tip down. */
function aroundRod(arrangement: Arrangement, count: number, spiral: Spiral): number[] {
  if (arrangement !== 'spiral')
    return new Array<number>(count + 1).fill(arrangement === 'on-top' ? Math.PI : 0);
  return [0, ...spiralAngles(count, spiral)];
}

/** What the line gives the reel about the butt's axis: it pulls the reel towards the stripping guide. */
function reelTorque(request: SpaceRequest, { rings }: SpaceAnswer): number {
  const { line } = spaceLoadingOf(request);
  const ring = rings.at(-1);
  if (!line || !ring) return 0;
  const [x, y, z] = line.reelM;
  const [ux, uy, uz] = [ring.xM - x, ring.yM - y, ring.zM - z];
  const scale = line.pullN / Math.hypot(ux, uy, uz);
  const [c, s] = [Math.cos(request.buttAngleRad), Math.sin(request.buttAngleRad)];
  // (r × F) about the axis (c, s, 0), turned round: positive from under to the right
  return -scale * (c * (y * uz - z * uy) + s * (z * ux - x * uz));
}

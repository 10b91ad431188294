import { type BenchFinding, doubtsOf, stopsOf } from '../bench/bench-finding.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import { type Arbor, placeArbors } from './arbors.ts';
import type { HandleKinds } from './handle-kinds.ts';
import { type HandleParts, type HandleRoom, handleRoom, type Room } from './handle-parts.ts';
import { type ReamingStep, reamingSteps } from './reaming.ts';
import { chooseTipTube, type TipTubeChoice } from './tip-tube.ts';
import { chooseWindingCheck, type WindingCheck } from './winding-check.ts';

export interface HandleBlank {
  lengthM: number;
  /** From the butt end to where the lowest section begins to be seen: the handle must lie on it. */
  buttSectionM: number;
  profile: readonly DiameterRow[];
}
export interface HandlePlan {
  room: HandleRoom;
  reaming: ReamingStep[];
  /** Of the rear grip, where the rod has one. */
  rearReaming: ReamingStep[];
  arbors: Arbor[];
  check: WindingCheck;
  tipTube: TipTubeChoice;
  /** What the tube was asked to leave for glue. */
  tubeRoomM: Room;
  /** Station of the stripping guide that the reach gives. */
  strippingFromTipM?: number;
  keeperFromTipM?: number;
  /** Blank and fighting butt together. */
  rodLengthM: number;
  findings: BenchFinding[];
}

/**
 * What to ream, where the arbors stand and what to order, from the diameters measured along the blank.
 * Undefined while no diameter was measured. A finding of severity `stop` names a part that cannot go on.
 */
export function planHandle(parts: HandleParts, blank: HandleBlank): HandlePlan | undefined {
  const tipM = diameterAt(blank.profile, 0);
  if (tipM === undefined) return undefined;
  const outsideM = (fromButtM: number) => diameterAt(blank.profile, blank.lengthM - fromButtM) ?? tipM;
  const room = handleRoom(parts);
  const findings = [...roomFindings(parts, blank, room), ...boreFindings(parts, room, outsideM)];
  const fits = !findings.some(({ severity }) => severity === 'stop');
  return {
    room,
    reaming: fits && room.grip ? reamingSteps({ ...parts, grip: room.grip, outsideM }) : [],
    rearReaming:
      fits && room.rearGrip
        ? reamingSteps({ ...parts, grip: room.rearGrip, gripBoreM: parts.rearGripBoreM, outsideM })
        : [],
    arbors: fits && room.seat && parts.seatBoreM ? placeArbors(parts, room.seat, outsideM) : [],
    check: chooseWindingCheck(outsideM(parts.gripFrontM), parts.checkRoomM),
    tipTube: chooseTipTube(tipM, parts.tubeRoomM),
    tubeRoomM: parts.tubeRoomM,
    strippingFromTipM: parts.reachM === undefined ? undefined : blank.lengthM - parts.reachM,
    keeperFromTipM:
      parts.keeperAheadM === undefined ? undefined : blank.lengthM - parts.gripFrontM - parts.keeperAheadM,
    rodLengthM: blank.lengthM + (parts.fightingButtM ?? 0),
    findings,
  };
}

const stopAt = stopsOf<HandleKinds>();
const doubtAt = doubtsOf<HandleKinds>();

function roomFindings(
  parts: HandleParts,
  blank: HandleBlank,
  { grip, seat, rearGrip }: HandleRoom,
): BenchFinding[] {
  const findings: BenchFinding[] = [];
  if (parts.gripFrontM > blank.buttSectionM) {
    const values = { frontM: parts.gripFrontM, sectionM: blank.buttSectionM };
    findings.push(stopAt('handle/-/gripFront', 'handle/grip-past-section', values));
  }
  if (grip && grip.fromM < -1e-9) {
    const values = { lengthM: parts.gripLengthM ?? 0, frontM: parts.gripFrontM };
    findings.push(stopAt('handle/-/gripLength', 'handle/grip-too-long', values));
  } else if (seat && seat.fromM < -1e-9) {
    const values = { missingM: -seat.fromM, mostM: seat.toM };
    findings.push(stopAt('handle/-/seatLength', 'handle/seat-too-long', values));
  } else if (rearGrip && rearGrip.fromM < -1e-9) {
    const values = { missingM: -rearGrip.fromM, mostM: rearGrip.toM };
    findings.push(stopAt('handle/-/rearGripLength', 'handle/rear-grip-too-long', values));
  }
  const reachM = parts.reachM ?? Number.POSITIVE_INFINITY;
  if (reachM <= parts.gripFrontM) {
    const values = { reachM, frontM: parts.gripFrontM };
    findings.push(stopAt('handle/-/reach', 'handle/reach-on-grip', values));
  }
  return findings;
}

type OutsideAt = (fromButtM: number) => number;

function boreFindings(parts: HandleParts, { grip, seat }: HandleRoom, outsideM: OutsideAt): BenchFinding[] {
  const findings: BenchFinding[] = [];
  if (grip && parts.gripBoreM !== undefined && parts.gripBoreM > outsideM(grip.toM) + 2 * loosestGripM) {
    const values = { boreM: parts.gripBoreM, overM: parts.gripBoreM - outsideM(grip.toM) };
    findings.push(doubtAt('handle/-/gripBore', 'handle/grip-bore-wide', values));
  }
  if (!seat || parts.seatBoreM === undefined) return findings;
  const thickestM = outsideM(Math.max(0, seat.fromM));
  const gapM = (parts.seatBoreM - outsideM(seat.toM)) / 2;
  if (parts.seatBoreM < thickestM) {
    const values = { boreM: parts.seatBoreM, blankM: thickestM };
    findings.push(stopAt('handle/-/seatBore', 'handle/seat-bore-small', values));
  } else if (gapM > parts.tapedGapM) {
    const values = { gapM, tapedM: parts.tapedGapM };
    findings.push(doubtAt('handle/-/seatBore', 'handle/seat-gap-wide', values));
  }
  return findings;
}

const loosestGripM = 0.0004;

import { type BenchFinding, bothLengths, doubt, stop } from '../bench/bench-finding.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import { formatMm } from '../units/format-quantity.ts';
import { type Arbor, placeArbors } from './arbors.ts';
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

function roomFindings(parts: HandleParts, blank: HandleBlank, { grip, seat }: HandleRoom): BenchFinding[] {
  const findings: BenchFinding[] = [];
  if (parts.gripFrontM > blank.buttSectionM) {
    const message = `The grip would end ${bothLengths(parts.gripFrontM)} from the butt end, past the butt section of ${bothLengths(blank.buttSectionM)}: set its front further back, or choose a shorter grip.`;
    findings.push(stop('handle/-/gripFront', message));
  }
  if (grip && grip.fromM < -1e-9) {
    const message = `A grip of ${bothLengths(parts.gripLengthM ?? 0)} is longer than the ${bothLengths(parts.gripFrontM)} from the butt end to its front: shorten it or move the front.`;
    findings.push(stop('handle/-/gripLength', message));
  } else if (seat && seat.fromM < -1e-9) {
    const message = `Grip and seat need ${bothLengths(-seat.fromM)} more than there is behind the grip's front: move the front forward, or take a shorter seat of at most ${bothLengths(seat.toM)}.`;
    findings.push(stop('handle/-/seatLength', message));
  }
  const reachM = parts.reachM ?? Number.POSITIVE_INFINITY;
  if (reachM <= parts.gripFrontM) {
    const message = `A reach of ${bothLengths(reachM)} ends on the grip, whose front is at ${bothLengths(parts.gripFrontM)}: measure from the butt end to where the hand strips line.`;
    findings.push(stop('handle/-/reach', message));
  }
  return findings;
}

type OutsideAt = (fromButtM: number) => number;

function boreFindings(parts: HandleParts, { grip, seat }: HandleRoom, outsideM: OutsideAt): BenchFinding[] {
  const findings: BenchFinding[] = [];
  if (grip && parts.gripBoreM !== undefined && parts.gripBoreM > outsideM(grip.toM) + 2 * loosestGripM) {
    const message = `The grip's bore of ${bothLengths(parts.gripBoreM)} is ${bothLengths(parts.gripBoreM - outsideM(grip.toM))} wider than the blank at its front: bush the front, or choose a grip with a smaller bore.`;
    findings.push(doubt('handle/-/gripBore', message));
  }
  if (!seat || parts.seatBoreM === undefined) return findings;
  const thickestM = outsideM(Math.max(0, seat.fromM));
  const gapM = (parts.seatBoreM - outsideM(seat.toM)) / 2;
  if (parts.seatBoreM < thickestM) {
    const message = `The seat's bore of ${bothLengths(parts.seatBoreM)} is smaller than the blank under it, ${bothLengths(thickestM)}: open the insert, or choose a wider seat.`;
    findings.push(stop('handle/-/seatBore', message));
  } else if (gapM > parts.tapedGapM) {
    const message = `The seat leaves a gap of ${bothLengths(gapM)} all round, over ${formatMm(parts.tapedGapM)}: bridge it with a turned bush, cork, foam or mesh, not with tape.`;
    findings.push(doubt('handle/-/seatBore', message));
  }
  return findings;
}

const loosestGripM = 0.0004;

/**
 * A curve of the whole rod and one of a close-up of a part of it, made one.
 *
 * Both were read through marks of one plane; marks and lens leave each a smooth error of its own. The close-up is laid
 * on the whole (align-curve.ts) and takes its place where it covers it, faded in over the seam, so that the direction
 * jumps nowhere. What is local there comes from the close-up; where it stands in the plane, from the whole: a joined
 * point keeps the larger of both standard errors. Curves that lie further apart than three times what their standard
 * errors allow, or that differ in shape, are not joined: they are not of one bend, or not in one plane of marks.
 */

import { type Finding, type FindingValues, findingsOf } from '../finding.ts';
import {
  type Alignment,
  alignCurve,
  apartSigmaM,
  feetOn,
  moved,
  type RigidMove,
  type SeenPoint,
} from './align-curve.ts';
import type { JoinKinds } from './join-kinds.ts';

interface JoinedPoint extends SeenPoint {
  /** Point of the whole curve it is, or the one before its foot. */
  wholeIndex: number;
  /** How much of it is the close-up's, 0 to 1. */
  closeUpShare: number;
}
export interface JoinedCurves {
  status: 'joined';
  /** Hold to tip. */
  points: JoinedPoint[];
  /** Brings whatever else was seen in the close-up into the whole's frame. */
  move: RigidMove;
  /** How much of the whole's length the close-up covers. */
  overlapM: number;
  /** Root mean square between the curves there, before and after the move. */
  apartM: number;
  leftoverM: number;
}
type JoinAnswer = JoinedCurves | { status: 'not-joined'; finding: Finding };

const joinDefaults = {
  seamM: 0.05,
  /** Overlap below this says nothing of a turn. */
  leastOverlapM: 0.15,
  leastShare: 0.6,
  /** Root mean square of what lies between the curves over what is known of them. */
  mostApart: 3,
  mostLeftover: 1.5,
  /** Two taps on one tip. */
  tipM: 0.03,
};

/** Both hold to tip, metres in the plane of the marks; a close-up tapped the other way round is turned. */
export function joinCurves(whole: readonly SeenPoint[], closeUp: readonly SeenPoint[]): JoinAnswer {
  if (whole.length < 8 || closeUp.length < 8) return refused('load-test/few-points', {});
  const seen = inOrder(whole, closeUp);
  const before = feetOn(whole, seen);
  const overlap = overlapOf(whole, before);
  if (overlap.share < joinDefaults.leastShare || overlap.lengthM < joinDefaults.leastOverlapM) {
    return refused('load-test/close-up-elsewhere', {});
  }
  const apart = spread(seen, before);
  if (apart.ratio > joinDefaults.mostApart)
    return refused('load-test/close-up-beside', { apartM: apart.rmsM, usualM: 2 * apart.sigmaM });
  const aligned = alignCurve(whole, seen);
  const here = seen.map((point) => moved(point, aligned.move));
  const left = spread(here, aligned.feet);
  if (left.ratio > joinDefaults.mostLeftover)
    return refused('load-test/close-up-shape', { apartM: left.rmsM });
  const beyondM = tipBeyond(whole, here, aligned);
  if (beyondM > joinDefaults.tipM) return refused('load-test/close-up-tip', { beyondM });
  return {
    status: 'joined',
    points: blended(whole, here, aligned),
    move: aligned.move,
    overlapM: overlap.lengthM,
    apartM: apart.rmsM,
    leftoverM: left.rmsM,
  };
}

const found = findingsOf<JoinKinds>();

function refused<C extends keyof JoinKinds>(code: C, values: JoinKinds[C] & FindingValues): JoinAnswer {
  return { status: 'not-joined', finding: found('closeUp', code, values) };
}

/** Hold first, as the whole is. */
function inOrder(whole: readonly SeenPoint[], closeUp: readonly SeenPoint[]): readonly SeenPoint[] {
  const met = feetOn(whole, closeUp).flatMap((foot) => (foot ? [foot.alongM] : []));
  return met.length > 1 && met[0] > met[met.length - 1] ? closeUp.toReversed() : closeUp;
}

function overlapOf(whole: readonly SeenPoint[], feet: Alignment['feet']) {
  // beyond the reach of any drift it is another thing that was traced
  const lengthM = Math.hypot(
    whole[whole.length - 1].xM - whole[0].xM,
    whole[whole.length - 1].yM - whole[0].yM,
  );
  const met = feet.filter((foot) => foot !== undefined).filter(({ offM }) => Math.abs(offM) < 0.1 * lengthM);
  const along = met.map(({ alongM }) => alongM);
  return {
    share: met.length / feet.length,
    lengthM: met.length > 1 ? Math.max(...along) - Math.min(...along) : 0,
  };
}

function spread(points: readonly SeenPoint[], feet: Alignment['feet']) {
  let [square, whitened, variance, count] = [0, 0, 0, 0];
  points.forEach((point, i) => {
    const foot = feet[i];
    if (!foot) return;
    const sigmaM = apartSigmaM(foot, point);
    square += foot.offM ** 2;
    whitened += (foot.offM / sigmaM) ** 2;
    variance += sigmaM ** 2;
    count++;
  });
  const root = (sum: number) => Math.sqrt(sum / Math.max(1, count));
  return { rmsM: root(square), ratio: root(whitened), sigmaM: root(variance) };
}

/** How far the close-up's end runs on past the tip of the whole; 0 where it ends before. */
function tipBeyond(whole: readonly SeenPoint[], here: readonly SeenPoint[], { feet }: Alignment): number {
  if (feet[feet.length - 1]) return 0;
  const [tip, end] = [whole[whole.length - 1], here[here.length - 1]];
  return Math.hypot(end.xM - tip.xM, end.yM - tip.yM);
}

function blended(
  whole: readonly SeenPoint[],
  here: readonly SeenPoint[],
  { feet }: Alignment,
): JoinedPoint[] {
  const met = feet.flatMap((foot) => (foot ? [foot] : []));
  const [first, last] = [met[0], met[met.length - 1]];
  const tip = whole[whole.length - 1];
  const endsAtTip = Math.hypot(tip.xM - last.xM, tip.yM - last.yM) <= joinDefaults.tipM;
  const own = (point: SeenPoint, wholeIndex: number): JoinedPoint => ({
    ...bare(point),
    wholeIndex,
    closeUpShare: 0,
  });
  const covered = here.flatMap((point, i): JoinedPoint[] => {
    const foot = feet[i];
    // before the hold of the whole there is nothing to join
    if (!foot) return endsAtTip && i > 0 && feet.slice(i).every((one) => !one) ? [beyond(point, whole)] : [];
    const out = endsAtTip ? 1 : (last.alongM - foot.alongM) / joinDefaults.seamM;
    return [mixed(point, foot, eased(Math.min((foot.alongM - first.alongM) / joinDefaults.seamM, out)))];
  });
  return [
    ...whole.slice(0, first.index + 1).map(own),
    ...covered,
    ...(endsAtTip ? [] : whole.slice(last.index + 1).map((point, i) => own(point, last.index + 1 + i))),
  ];
}

function bare({ xM, yM, sigmaM }: SeenPoint): SeenPoint {
  return { xM, yM, sigmaM };
}

function beyond(point: SeenPoint, whole: readonly SeenPoint[]): JoinedPoint {
  const wholeIndex = whole.length - 1;
  return {
    ...bare(point),
    sigmaM: Math.max(point.sigmaM, whole[wholeIndex].sigmaM),
    wholeIndex,
    closeUpShare: 1,
  };
}

function mixed(point: SeenPoint, foot: SeenPoint & { index: number }, share: number): JoinedPoint {
  const mix = (key: 'xM' | 'yM') => foot[key] + share * (point[key] - foot[key]);
  const sigmaM = Math.max(point.sigmaM, foot.sigmaM);
  return { xM: mix('xM'), yM: mix('yM'), sigmaM, wholeIndex: foot.index, closeUpShare: share };
}

/** 0 to 1 with level ends. */
function eased(share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t * t * (3 - 2 * t);
}

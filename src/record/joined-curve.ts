import { type Finding, findingsOf } from '../engine/finding.ts';
/** Close-ups of a load test joined to the curve of its whole picture; rings come along. */
import { moved } from '../engine/load-test/align-curve.ts';
import { type JoinedCurves, joinCurves } from '../engine/load-test/join-curves.ts';
import type { JoinKinds } from '../engine/load-test/join-kinds.ts';
import type { CurveRing } from './load-curve.ts';
import type { LoadPhoto, PhotoTrace } from './read-load-photo.ts';

const found = findingsOf<JoinKinds>();

/** What became of a close-up. */
export interface CloseUpUse {
  photo: LoadPhoto;
  /** Undefined where it was not joined. */
  joined: Pick<JoinedCurves, 'move' | 'overlapM' | 'apartM' | 'leftoverM'> | undefined;
  /** Why not, and what to do. */
  why: Finding | undefined;
}

/** The whole's trace with every standing close-up in it, the last on top; px stay those of the whole picture. */
export function withCloseUps(
  whole: PhotoTrace,
  photos: readonly LoadPhoto[],
): { trace: PhotoTrace; closeUps: CloseUpUse[] } {
  const closeUps: CloseUpUse[] = [];
  let trace = whole;
  for (const photo of photos) {
    if (photo.part !== 'close-up' || !photo.trace) continue;
    if (photo.trace.outOfDate) {
      closeUps.push({ photo, joined: undefined, why: found('', 'load-test/close-up-out-of-date', {}) });
      continue;
    }
    const answer = joinCurves(trace.points, photo.trace.points);
    if (answer.status === 'joined') {
      const { points, ...joined } = answer;
      closeUps.push({ photo, joined, why: undefined });
      trace = joinedTrace(trace, answer, photo.trace.rings);
    } else closeUps.push({ photo, joined: undefined, why: answer.finding });
  }
  return { trace, closeUps };
}

function joinedTrace(
  whole: PhotoTrace,
  { points, move }: JoinedCurves,
  rings: readonly CurveRing[],
): PhotoTrace {
  const nearer = rings.map((ring) => moved(ring, move));
  const told = new Set(rings.map(({ guide }) => guide));
  return {
    ...whole,
    points: points.map(({ xM, yM, sigmaM, wholeIndex }) => ({
      xM,
      yM,
      sigmaM,
      px: whole.points[wholeIndex].px,
    })),
    // the tip-top's ring has no guide: the nearer one comes first
    rings: [...nearer, ...whole.rings.filter(({ guide }) => guide === undefined || !told.has(guide))],
  };
}

/**
 * The answers of a line that rubs in its rings or may lie on the blank: rings and gaps are of the rings alone, tensions
 * and touched stretches beside them.
 */
import { touchedStretches } from '../bend/bend-answer.ts';
import { bendReason } from '../bend/bend-kinds.ts';
import type { LineFriction } from '../bend/friction.ts';
import { type RoundBlank, settleContactInSpace } from './contact-in-space.ts';
import { settleFrictionInSpace } from './friction-in-space.ts';
import { readRingsInSpace, readSpansInSpace } from './reading-in-space.ts';
import { type SolvedInSpace, type SpaceAnswer, spaceAnswer } from './space-answer.ts';
import { makeSpaceState, placeState } from './state.ts';

/** From the free line's bend to the one of a line that rubs in its rings. */
export function answerRubbing(free: SolvedInSpace, friction: LineFriction): SpaceAnswer {
  const settled = settleFrictionInSpace(free.mesh, free.loading, friction, free.state);
  const followed = { ...free.followed, iterations: free.followed.iterations + settled.iterations };
  return {
    ...spaceAnswer({ ...free, loading: settled.loading, followed }),
    ...unsettled(settled.converged, 'bend/friction-unsettled'),
    lineTensionN: Array.from(settled.loading.line!.spanTensionN),
  };
}

/** From the free line's bend to the one of a line on the blank. */
export function answerTouching(free: SolvedInSpace, blank: RoundBlank, friction?: LineFriction): SpaceAnswer {
  const touching = settleContactInSpace(free.mesh, free.loading, blank, free.state, friction);
  const { mesh, loading, state, ringOfSupport } = touching;
  const line = loading.line!;
  const isRing = (_: unknown, k: number) => ringOfSupport[k] >= 0;
  const spanTensionN = line.spanTensionN.filter(isRing);
  const followed = { ...free.followed, iterations: free.followed.iterations + touching.iterations };
  const answer = spaceAnswer({ ...free, mesh, loading, state, followed });
  // gaps are counted from straight chords between the rings of this bend
  const chords = makeSpaceState(free.mesh);
  chords.q.set(state.q);
  placeState(free.mesh, free.loading.line, chords);
  return {
    ...answer,
    ...unsettled(touching.converged, 'bend/contact-unsettled'),
    rings: readRingsInSpace(line, state).filter(isRing),
    spans: readSpansInSpace(free.mesh, { ...free.loading.line!, spanTensionN }, chords),
    // the last one at the reel itself, past what the line rubs on behind the last ring
    ...(friction
      ? { lineTensionN: [...spanTensionN.subarray(0, -1), line.spanTensionN[line.spanTensionN.length - 1]] }
      : {}),
    contact: { stretches: touchedStretches(mesh, ringOfSupport) },
  };
}

function unsettled(converged: boolean, cause: 'bend/friction-unsettled' | 'bend/contact-unsettled') {
  return converged ? {} : { status: 'not-converged' as const, reason: bendReason(cause, {}) };
}

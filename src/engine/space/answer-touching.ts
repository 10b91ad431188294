/** The answer of a line that may lie on the blank: rings and gaps are of the rings alone, touched stretches beside them. */
import { touchedStretches } from '../bend/bend-answer.ts';
import { type RoundBlank, settleContactInSpace } from './contact-in-space.ts';
import { readRingsInSpace, readSpansInSpace } from './reading-in-space.ts';
import { type SolvedInSpace, type SpaceAnswer, spaceAnswer } from './space-answer.ts';
import { makeSpaceState, placeState, type SpaceLine } from './state.ts';

/** From the free line's bend to the one of a line on the blank. */
export function answerTouching(free: SolvedInSpace, blank: RoundBlank): SpaceAnswer {
  const touching = settleContactInSpace(free.mesh, free.loading, blank, free.state);
  const { mesh, loading, state, ringOfSupport } = touching;
  const followed = { ...free.followed, iterations: free.followed.iterations + touching.iterations };
  const answer = spaceAnswer({ ...free, mesh, loading, state, followed });
  // gaps are counted from straight chords between the rings of this bend
  const chords = makeSpaceState(free.mesh);
  chords.q.set(state.q);
  placeState(free.mesh, free.loading.line, chords);
  return {
    ...answer,
    ...(touching.converged ? {} : { status: 'not-converged' as const, reason: notSettled }),
    rings: readRingsInSpace(loading.line as SpaceLine, state).filter((_, k) => ringOfSupport[k] >= 0),
    spans: readSpansInSpace(free.mesh, free.loading.line as SpaceLine, chords),
    contact: { stretches: touchedStretches(mesh, ringOfSupport) },
  };
}

const notSettled =
  'the places where the line lies on the blank did not settle; the bend shown is the last one tried';

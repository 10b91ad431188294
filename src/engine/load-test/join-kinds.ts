import { reasonsOf } from '../finding.ts';

/** Why a close-up is not joined to its whole picture. */
export interface JoinKinds {
  'load-test/few-points': Nothing;
  'load-test/close-up-elsewhere': Nothing;
  'load-test/close-up-beside': { apartM: number; usualM: number };
  'load-test/close-up-shape': { apartM: number };
  'load-test/close-up-tip': { beyondM: number };
  'load-test/close-up-out-of-date': Nothing;
}

/** Why a load test is neither foretold nor judged, or makes a doubtful comparison. */
export interface LoadTestReasons {
  'load-test/bent-too-far': Nothing;
  'load-test/curve-refused': Nothing;
  'load-test/no-bend': Nothing;
  'load-test/curve-length': { curveM: number; rodM: number };
  'load-test/butt-angle': { seenRad: number; typedRad: number };
}
type Nothing = Record<string, never>;

export const loadTestReason = reasonsOf<LoadTestReasons>();

import type { TraceRequest } from '../trace/trace-request.ts';

/** What tells where the blank must be. */
export interface EndsKnown {
  marks: TraceRequest['marks'];
  /** Along the blank, from where it leaves the clamp or grip to its tip. */
  lengthM: number;
  /** Where it leaves the clamp or grip, in the marks' plane, and the standard error of each coordinate. */
  clamp: { atM: readonly [number, number]; sigmaM: number };
}

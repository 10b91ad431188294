import { type Finding, type FindingValues, findingsOf } from '../finding.ts';
import type { BenchKinds } from './bench-kinds.ts';

export interface BenchFinding extends Finding {
  /** `stop`: nothing sensible can be computed from it. `doubt`: it can, but it looks like a slip. */
  severity: 'stop' | 'doubt';
}

/** As `findingsOf`, for findings that stop the work, or only put a doubt on it. */
export const stopsOf = <Kinds>() => severeOf<Kinds>('stop');
export const doubtsOf = <Kinds>() => severeOf<Kinds>('doubt');

function severeOf<Kinds>(severity: BenchFinding['severity']) {
  const found = findingsOf<Kinds>();
  return <C extends keyof Kinds & string>(
    path: string,
    code: C,
    values: Kinds[C] & FindingValues,
  ): BenchFinding => ({ ...found(path, code, values), severity });
}

export const stopAt = stopsOf<BenchKinds>();
export const doubtAt = doubtsOf<BenchKinds>();

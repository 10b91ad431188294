import { findingsOf } from './finding.ts';

/** What is wrong with a value where its field says the rest. */
export interface InputKinds {
  /** At least `low` (or more than `over`), at most `high`; `unit`: m, kg, N, rad, or none. */
  'input/out-of-range': {
    value: number;
    unit?: string;
    low?: number;
    over?: number;
    high?: number;
    whole?: boolean;
  };
  'input/one-for-each': { given: number; wanted: number };
  'input/not-a-choice': { value: string; choices: readonly string[] };
}

export const inputFound = findingsOf<InputKinds>();

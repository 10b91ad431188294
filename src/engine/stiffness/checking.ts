import { type Finding, type FindingValues, type InputKinds, inputFound } from '../finding.ts';
import { type FitKinds, fitFound } from './fit-kinds.ts';

type Range = Omit<InputKinds['input/out-of-range'], 'value'>;

/** Gathers what makes no sense in a request. */
export interface Checking {
  readonly findings: Finding[];
  /** The value must be finite and within. */
  range(path: string, value: number, range: Range): void;
  refuse<C extends keyof FitKinds>(
    holds: boolean,
    path: string,
    code: C,
    values: FitKinds[C] & FindingValues,
  ): void;
}

export function checking(): Checking {
  const findings: Finding[] = [];
  return {
    findings,
    range: (path, value, range) => {
      if (!inRange(value, range)) findings.push(inputFound(path, 'input/out-of-range', { value, ...range }));
    },
    refuse: (holds, path, code, values) => {
      if (!holds) findings.push(fitFound(path, code, values));
    },
  };
}

function inRange(value: number, { low, over, high }: Range): boolean {
  const enough = low === undefined ? over === undefined || value > over : value >= low;
  return Number.isFinite(value) && enough && (high === undefined || value <= high);
}

import { type Finding, type FindingValues, findingsOf, said } from '../finding.ts';
import { formatInches } from '../units/format-inches.ts';
import { formatGrams, formatMm } from '../units/format-quantity.ts';
import type { BenchKinds } from './bench-kinds.ts';

export interface BenchFinding extends Finding {
  /** `stop`: nothing sensible can be computed from it. `doubt`: it can, but it looks like a slip. */
  severity: 'stop' | 'doubt';
}

const found = findingsOf<BenchKinds>();

export function stopAt<C extends keyof BenchKinds>(
  path: string,
  code: C,
  values: BenchKinds[C] & FindingValues,
): BenchFinding {
  return { ...found(path, code, values), severity: 'stop' };
}
export function doubtAt<C extends keyof BenchKinds>(
  path: string,
  code: C,
  values: BenchKinds[C] & FindingValues,
): BenchFinding {
  return { ...found(path, code, values), severity: 'doubt' };
}

export function stop(path: string, message: string): BenchFinding {
  return { ...said(path, message), severity: 'stop' };
}
export function doubt(path: string, message: string): BenchFinding {
  return { ...said(path, message), severity: 'doubt' };
}

/** A length in both systems, so that a finding reads the same in every shop: `686 mm (27 in)`. */
export function bothLengths(lengthM: number): string {
  const mm = formatMm(lengthM, Math.abs(lengthM) < 0.02 ? 2 : 0);
  return `${mm} (${formatInches(lengthM, { denominator: 16 }).text})`;
}
export function grams(massKg: number): string {
  return formatGrams(massKg, massKg < 0.1 ? 1 : 0);
}

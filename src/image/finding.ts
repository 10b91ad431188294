import type { Finding } from '../engine/finding.ts';

/** Input that makes no sense; nothing was computed. */
export interface Refused {
  status: 'refused';
  findings: Finding[];
}

export function refusedWith(findings: Finding[]): Refused {
  return { status: 'refused', findings };
}

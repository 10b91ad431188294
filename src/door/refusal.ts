import type { Finding } from '../engine/finding.ts';

export interface Refused {
  status: 'refused';
  findings: Finding[];
}

export function refuse(findings: Finding[]): Refused {
  return { status: 'refused', findings };
}

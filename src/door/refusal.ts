import type { Finding, Reason } from '../engine/finding.ts';
import { sentenceOf } from '../words/sentence.ts';
import { siWriter } from '../words/writer.ts';

/** A finding as the door says it: SI, the field as the request names it. */
export interface SaidFinding {
  path: string;
  message: string;
}

export interface Refused {
  status: 'refused';
  findings: SaidFinding[];
}

export function refuse(findings: SaidFinding[]): Refused {
  return { status: 'refused', findings };
}

/** An answer of the engine with its findings and its reason in words. */
export function inWords(answer: object): object {
  const { status, reason, findings } = answer as Unsaid;
  const said = findings?.map(sayFinding);
  const why = status === 'lost' ? said?.at(-1)?.message : reason && sayReason(reason);
  return { ...answer, ...(why ? { reason: why } : {}), ...(said ? { findings: said } : {}) };
}

/** What an answer may still hold as data. */
interface Unsaid {
  status?: string;
  reason?: Reason | string;
  findings?: readonly (Finding | SaidFinding)[];
}

function sayReason(reason: Reason | string): string {
  return typeof reason === 'string' ? reason : sentenceOf(reason, siWriter);
}

/** A picture that cannot be opened is refused in words already. */
function sayFinding(finding: Finding | SaidFinding): SaidFinding {
  if ('message' in finding) return finding;
  return { path: finding.path, message: sentenceOf(finding, siWriter) };
}

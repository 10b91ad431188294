import type { Finding } from '../engine/finding.ts';
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

/** An answer of the engine with its findings in words. */
export function inWords(answer: object): object {
  const { findings } = answer as { findings?: readonly (Finding | SaidFinding)[] };
  if (!findings) return answer;
  const said = findings.map(sayFinding);
  const lost = (answer as { status?: string }).status === 'lost';
  return { ...answer, ...(lost ? { reason: said[said.length - 1].message } : {}), findings: said };
}

/** A picture that cannot be opened is refused in words already. */
function sayFinding(finding: Finding | SaidFinding): SaidFinding {
  if ('message' in finding) return finding;
  return { path: finding.path, message: sentenceOf(finding, siWriter) };
}

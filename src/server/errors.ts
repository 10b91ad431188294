import type { Objection } from '../record/operation.ts';

/** What was sent is wrong; nothing was changed. */
export class RefusedError extends Error {
  readonly findings: Objection[];
  constructor(findings: Objection[]) {
    super(findings[0]?.message ?? 'Refused');
    this.findings = findings;
  }
}
export class NotFoundError extends Error {}
/** It contradicts what is already there. */
export class ConflictError extends Error {}
export class TooLargeError extends Error {}
/** What is read is not what was stored; nothing of it is handed out as good. */
export class DamagedError extends Error {}

export function documentNotFound(document: string): never {
  throw new NotFoundError(`There is no document ${document}. Go back to the list of builds`);
}

/** Something the builder should know or mend: the field it concerns, and what to do, in plain words. */
export interface Finding {
  path: string;
  message: string;
}

/** Input that makes no sense; nothing was computed. */
export interface Refused {
  status: 'refused';
  findings: Finding[];
}

export function refusedWith(findings: Finding[]): Refused {
  return { status: 'refused', findings };
}

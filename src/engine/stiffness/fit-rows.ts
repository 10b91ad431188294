/** Rows of the record behind the request's indices: `rows[setup].tests[test].readings[reading]`. */
export interface FitRows {
  setupId: string;
  /** A photograph: the id is its load test's. */
  curve?: true;
  tests: { testId: string; readings: string[] }[];
  flagChecks?: string[];
}

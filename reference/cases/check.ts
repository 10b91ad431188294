/** One number of ours beside one number of theirs. */
export interface Check {
  /** Row of check-values.json, or what was computed live. */
  id: string;
  quantity: string;
  source: string;
  unit: string;
  ours: number;
  theirs: number;
  /** Largest |ours - theirs| that passes. */
  allowance: number;
}

/** A heading of the verification report and its rows. */
export interface CheckGroup {
  title: string;
  /** What was set up and what the allowance stands for. */
  about: string;
  checks: Check[];
}

/** False also where either number is missing. */
export function passes(check: Check): boolean {
  return Math.abs(check.ours - check.theirs) <= check.allowance;
}

/** Fails with the rows that do not agree; an empty group is a failure too. */
export function assertGroup(group: CheckGroup): void {
  if (group.checks.length === 0) throw new Error(`${group.title}: nothing was checked`);
  const failed = group.checks.filter((check) => !passes(check));
  if (failed.length === 0) return;
  const lines = failed.map(
    ({ id, ours, theirs, allowance }) =>
      `${id}: ours ${ours}, theirs ${theirs}, error ${Math.abs(ours - theirs).toExponential(1)}, allowed ${allowance.toExponential(1)}`,
  );
  throw new Error(`${group.title}\n${lines.join('\n')}`);
}

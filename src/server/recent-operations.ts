import type { StoredOperation } from '../record/operation.ts';

const mostKept = 200;

/**
 * The latest operations this process stored in one document, a run of `seq` without gaps: who was told of them by
 * this process need not read them from the database.
 */
export class RecentOperations {
  private run: StoredOperation[] = [];

  /** What comes late (two appends that end in the other order) is left to the database. */
  add(operations: readonly StoredOperation[]): void {
    const [first] = operations;
    const last = this.run.at(-1);
    if (!first || (last && first.seq <= last.seq)) return;
    const joined = last && first.seq === last.seq + 1 ? [...this.run, ...operations] : operations;
    this.run = joined.slice(-mostKept);
  }

  /** Those after `seq`, in order; undefined where some are not here. */
  after(seq: number): StoredOperation[] | undefined {
    const [first] = this.run;
    if (!first || first.seq > seq + 1) return undefined;
    return this.run.filter((operation) => operation.seq > seq);
  }
}

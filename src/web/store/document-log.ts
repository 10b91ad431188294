import { type Conflict, openConflicts } from '../../record/conflicts.ts';
import { applyOperations } from '../../record/document.ts';
import type { DocumentState, Operation, StoredOperation } from '../../record/operation.ts';
import { stateAfter } from '../../record/past.ts';
import type { DocumentKind } from '../../record/schema.ts';
import { nothingStanding, type Standing, stateOf } from '../../record/standing.ts';
import { planRedo, planUndo, type UndoPlan } from '../../record/undo.ts';

/**
 * What this page has of a document's history: its end, operation by operation, and of what lies before that only what
 * it comes down to. Earlier operations are read when somebody asks for them.
 */
export class DocumentLog {
  /** What precedes `operations`, where none of it was read. */
  readonly before: Standing;
  /** The state it leaves. */
  private readonly base: DocumentState;
  /** Read since, in front of the rest. */
  private earlier: StoredOperation[] = [];
  /** How many operations precede those of `all`. */
  start: number;
  /** What follows on `before`, in the order of arrival. */
  recent: Operation[] = [];
  private readonly known = new Set<string>();
  /** Only what another device writes opens one. */
  private conflicts: readonly Conflict[] = [];
  private countedAt = -1;
  private undoable: string | null = null;
  private redoable: string | null = null;
  document: DocumentState;
  lastSeq = 0;
  /** The operation of that number, by which the server knows whether it is still the same log. */
  lastId = '';

  constructor(id: string, kind: DocumentKind, before: Standing = nothingStanding) {
    this.before = before;
    this.base = stateOf(before, id, kind);
    this.document = this.base;
    this.start = before.seq;
    this.lastSeq = before.seq;
    for (const { id: known } of before.operations) this.known.add(known);
  }

  /** In the order of arrival, from `start` on. */
  get all(): readonly Operation[] {
    return this.earlier.length === 0 ? this.recent : [...this.earlier, ...this.recent];
  }

  /** Everything this page could give a server that lost it. */
  get held(): readonly Operation[] {
    const read = new Set(this.earlier.map(({ id }) => id));
    const others = this.before.operations.filter(({ id }) => !read.has(id));
    return [...others, ...this.all];
  }

  has(id: string): boolean {
    return this.known.has(id);
  }

  /** Operations that lie right before those read so far, after `after`. */
  prepend(operations: readonly StoredOperation[], after: number): void {
    const next = operations.filter(({ seq }) => seq <= this.start);
    for (const { id } of next) this.known.add(id);
    this.earlier = [...next, ...this.earlier];
    this.start = Math.min(this.start, after);
    this.countedAt = -1;
  }

  /** Operations from the server, in order. */
  receive(operations: readonly (Operation & { seq: number })[]): void {
    for (const { seq, id } of operations) if (seq > this.lastSeq) this.hasUpTo(seq, id);
    this.take(operations);
  }

  /** What was acknowledged counts as had, where nothing of others lies between. */
  count(accepted: readonly { id: string; seq: number }[]): void {
    for (const { id, seq } of accepted) if (seq === this.lastSeq + 1) this.hasUpTo(seq, id);
  }

  hasUpTo(seq: number, id: string): void {
    this.lastSeq = seq;
    this.lastId = id;
  }

  take(operations: readonly Operation[]): void {
    const fresh = operations.filter((operation) => !this.known.has(operation.id));
    for (const operation of fresh) this.known.add(operation.id);
    this.recent.push(...fresh);
    this.document = applyOperations(this.document, fresh);
  }

  /** The document as it would be without these. */
  drop(operations: readonly Operation[]): void {
    const ids = new Set(operations.map((operation) => operation.id));
    this.recent = this.recent.filter((operation) => !ids.has(operation.id));
    this.document = applyOperations(this.base, this.recent);
    this.conflicts = [];
    this.countedAt = -1;
  }

  /** The state after so many operations, where this page can tell. */
  stateAfter(upTo: number): DocumentState | undefined {
    if (upTo < this.before.seq) return undefined;
    return stateAfter(this.recent, upTo - this.before.seq, this.document.kind, this.base);
  }

  planUndo(device: string): UndoPlan | undefined {
    return planUndo(this.all, device);
  }

  planRedo(device: string): UndoPlan | undefined {
    return planRedo(this.all, device);
  }

  /** What is read off the log, once for each length of it: that takes a while. */
  readOff(device: string) {
    if (this.countedAt !== this.recent.length) {
      this.countedAt = this.recent.length;
      this.undoable = targetOf(this.planUndo(device));
      this.redoable = targetOf(this.planRedo(device));
      this.conflicts = sameOrNew(this.conflicts, openConflicts([...this.before.operations, ...this.recent]));
    }
    return { undo: this.undoable, redo: this.redoable, conflicts: this.conflicts };
  }
}

function targetOf(plan: UndoPlan | undefined): string | null {
  return plan && plan.changes.length > 0 ? plan.target : null;
}

/** The list of before where nothing in it changed: who shows it need not draw it again. */
function sameOrNew(before: readonly Conflict[], now: readonly Conflict[]): readonly Conflict[] {
  const same =
    now.length === before.length &&
    now.every(
      ({ standing, other }, index) =>
        standing.id === before[index].standing.id && other.id === before[index].other.id,
    );
  return same ? before : now;
}

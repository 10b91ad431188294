import type { Revision } from '../../record/api.ts';
import { applyOperations, emptyDocument, makeOperations } from '../../record/document.ts';
import { type FillRandom, makeId } from '../../record/identity.ts';
import {
  type Change,
  compareStamps,
  type DocumentState,
  type Objection,
  type Operation,
  type Path,
} from '../../record/operation.ts';
import type { DocumentKind } from '../../record/schema.ts';
import { historyOf, planRedo, planUndo, type UndoPlan, undoGesture } from '../../record/undo.ts';
import { validateValue } from '../../record/validate.ts';
import type { Api } from './api.ts';
import { type Conflict, conflictsWith, unsentConflicts } from './conflicts.ts';
import type { LiveFeed } from './live-feed.ts';
import type { Outbox } from './outbox.ts';
import { type SaveStatus, Sender } from './sender.ts';

/** One change by the builder; undo takes back all that was written under it. */
export interface Gesture {
  id: string;
}

/** All a screen needs; a new object whenever any of it changed, the same one otherwise. */
export interface StoreSnapshot {
  document: DocumentState;
  save: SaveStatus;
  /** What undo would take back (a label for the button), or null. */
  undo: string | null;
  redo: string | null;
  conflicts: readonly Conflict[];
  /** What of the document the server cannot read as stored any more; undefined where all is good. */
  damage: string | undefined;
}

/** What undo or redo did: `held` are fields another device has changed since, which were left as they are. */
export interface UndoOutcome {
  done: boolean;
  label: string;
  held: Path[];
}

export interface StoreParts {
  api: Pick<Api, 'operationsAfter' | 'append' | 'freezeRevision'>;
  outbox: Outbox;
  feed?: LiveFeed;
  /** `${device}-${session}`, see device.ts. */
  device: string;
  fillRandom: FillRandom;
  now(): Date;
  retryFirstMs?: number;
}

/** Most conflicts kept for showing; the history has them all. */
const conflictsShown = 20;

/**
 * One open document: its state at once with every change made here, saved behind the scenes, and with the
 * changes of others as they arrive. Use with React's `useSyncExternalStore(store.subscribe, store.getSnapshot)`.
 */
export class DocumentStore {
  private readonly parts: StoreParts;
  private readonly sender: Sender;
  private readonly listeners = new Set<() => void>();
  private readonly known = new Set<string>();
  private log: Operation[] = [];
  private document: DocumentState;
  private lastSeq = 0;
  private conflicts: Conflict[] = [];
  private damage: string | undefined;
  private snapshot: StoreSnapshot;
  private unwatch: (() => void) | undefined;
  /** Outbox work in the order asked for: an operation is never removed before it was added. */
  private outboxWork: Promise<void> = Promise.resolve();
  /** Gestures on their way into the outbox, and whether it failed to take any that is still unsaved. */
  private beingKept = 0;
  private outboxFailed = false;

  /** Under which name the outbox keeps what is unsent: one document of one record. */
  private readonly outboxName: string;
  /** Undo and redo labels for a log of this length; reading them off the log takes a while. */
  private labels = { length: -1, undo: null as string | null, redo: null as string | null };

  private constructor(record: string, id: string, kind: DocumentKind, parts: StoreParts) {
    this.parts = parts;
    this.outboxName = `${record}.${id}`;
    this.document = emptyDocument(id, kind);
    this.sender = new Sender({
      post: (operations) => parts.api.append(id, operations),
      acknowledged: (operations) => this.forget(operations),
      changed: () => this.refresh(),
      retryFirstMs: parts.retryFirstMs,
    });
    this.snapshot = this.takeSnapshot();
  }

  /** Fetches the document, takes up what an earlier page left unsent, and follows what others do. */
  static async open(id: string, parts: StoreParts): Promise<DocumentStore> {
    let answer = await parts.api.operationsAfter(id, 0);
    const store = new DocumentStore(answer.record, id, answer.document.kind, parts);
    store.receive(answer.operations);
    store.damage = answer.damage;
    while (answer.more) {
      answer = await parts.api.operationsAfter(id, answer.lastSeq);
      store.receive(answer.operations);
      store.damage ??= answer.damage;
    }
    const unsent = (await parts.outbox.list(store.outboxName)).filter(
      (operation) => !store.known.has(operation.id),
    );
    // What was typed while the network was away may have met a change that this page has not seen till now.
    store.conflicts = unsentConflicts(store.document, unsent);
    store.take(unsent.sort(compareStamps));
    store.sender.enqueue(unsent);
    store.unwatch = parts.feed?.watch({
      document: id,
      after: () => store.lastSeq,
      received: (operations) => store.receive(operations, true),
      connected: () => store.sender.retryNow(),
    });
    store.refresh();
    return store;
  }

  readonly getSnapshot = (): StoreSnapshot => this.snapshot;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  /** A gesture to write under several times, such as a drag; undo then takes the whole of it back. */
  gesture(label: string): Gesture {
    const words = label.replace(/[^\w -]/g, ' ').slice(0, 80);
    return { id: `${words}.${makeId(this.parts.fillRandom, 8)}` };
  }

  /**
   * Writes values: here at once, on the server as soon as it can be reached. `gesture` is a label ("move
   * guide") for a gesture of its own, or one from `gesture()`. With findings nothing was written.
   */
  write(gesture: string | Gesture, changes: readonly Change[]): Objection[] {
    const findings = changes.flatMap(({ path, value }) => validateValue(this.document.kind, path, value));
    if (findings.length === 0)
      this.commit(typeof gesture === 'string' ? this.gesture(gesture).id : gesture.id, changes);
    return findings;
  }

  /** A new row's id. */
  newRowId(): string {
    return makeId(this.parts.fillRandom);
  }

  undo(): UndoOutcome {
    return this.carryOut(planUndo(this.log, this.parts.device));
  }

  redo(): UndoOutcome {
    return this.carryOut(planRedo(this.log, this.parts.device));
  }

  /** Every value ever written at a path, the earliest first. */
  history(path: Path): Operation[] {
    return historyOf(this.log, path);
  }

  /** The whole history in the order of arrival; grows whenever the snapshot's document changes. */
  operations(): readonly Operation[] {
    return this.log;
  }

  /** Under which name this page writes. */
  get device(): string {
    return this.parts.device;
  }

  /** Resolves when the server has everything written so far, refused changes aside. */
  settled(): Promise<void> {
    return this.sender.settled();
  }

  /** Freezes the document as it stands, for a print; waits until the server has it all. */
  async freezeRevision(engineVersion: string): Promise<Revision> {
    await this.settled();
    return this.parts.api.freezeRevision(this.document.id, engineVersion);
  }

  retryNow(): void {
    this.sender.retryNow();
  }

  /** Gives up changes the server refused, and shows the document without them. */
  dropRefused(): void {
    const dropped = this.sender.dropRefused();
    this.forget(dropped);
    const ids = new Set(dropped.map((operation) => operation.id));
    this.log = this.log.filter((operation) => !ids.has(operation.id));
    const { id, kind } = this.document;
    this.document = applyOperations(emptyDocument(id, kind), this.log);
    this.labels.length = -1;
    this.refresh();
  }

  /** Nobody looks any more. What is not sent yet still goes out, for as long as the page stands. */
  close(): void {
    this.unwatch?.();
    this.listeners.clear();
  }

  private carryOut(plan: UndoPlan | undefined): UndoOutcome {
    if (!plan) return { done: false, label: '', held: [] };
    if (plan.changes.length > 0) this.commit(undoGesture(plan, this.document.clock + 1), plan.changes);
    return { done: plan.changes.length > 0, label: labelOf(plan.target), held: plan.held };
  }

  private commit(gesture: string, changes: readonly Change[]): void {
    const at = this.parts.now().toISOString();
    const operations = makeOperations(this.document, changes, { device: this.parts.device, gesture, at });
    this.take(operations);
    this.keepInOutbox(operations);
    this.sender.enqueue(operations);
    this.refresh();
  }

  /** Operations from the server. */
  private receive(operations: readonly (Operation & { seq: number })[], live = false): void {
    if (live) {
      const fresh = operations.filter((operation) => !this.known.has(operation.id));
      const found = conflictsWith(this.document, fresh, this.parts.device);
      this.conflicts = [...this.conflicts, ...found].slice(-conflictsShown);
    }
    for (const { seq } of operations) this.lastSeq = Math.max(this.lastSeq, seq);
    this.take(operations);
    if (live) this.refresh();
  }

  private take(operations: readonly Operation[]): void {
    const fresh = operations.filter((operation) => !this.known.has(operation.id));
    for (const operation of fresh) this.known.add(operation.id);
    this.log.push(...fresh);
    this.document = applyOperations(this.document, fresh);
  }

  private forget(operations: readonly Operation[]): void {
    const ids = operations.map((operation) => operation.id);
    this.laterInOutbox(() => this.parts.outbox.remove(this.outboxName, ids));
  }

  /** Only once they stand there are they said to be kept. */
  private keepInOutbox(operations: readonly Operation[]): void {
    this.beingKept += 1;
    this.laterInOutbox(async () => {
      try {
        await this.parts.outbox.add(this.outboxName, operations);
      } catch {
        this.outboxFailed = true;
      } finally {
        this.beingKept -= 1;
        if (this.sender.status.kind === 'kept') this.refresh();
      }
    });
  }

  /** A full or broken outbox must not stop the sending; the status says what is kept nowhere. */
  private laterInOutbox(work: () => Promise<void>): void {
    this.outboxWork = this.outboxWork.then(work).catch(() => undefined);
  }

  private refresh(): void {
    this.snapshot = this.takeSnapshot();
    for (const listener of this.listeners) listener();
  }

  private takeSnapshot(): StoreSnapshot {
    if (this.labels.length !== this.log.length) {
      const undo = labelOfPlan(planUndo(this.log, this.parts.device));
      const redo = labelOfPlan(planRedo(this.log, this.parts.device));
      this.labels = { length: this.log.length, undo, redo };
    }
    const { undo, redo } = this.labels;
    const { document, conflicts, damage } = this;
    return { document, save: this.saveStatus(), undo, redo, conflicts, damage };
  }

  private saveStatus(): SaveStatus {
    const { status } = this.sender;
    if (status.kind === 'saved') this.outboxFailed = false;
    if (status.kind !== 'kept') return status;
    if (this.beingKept > 0) return { kind: 'saving', pending: status.pending };
    return this.outboxFailed ? { ...status, onlyOnPage: true } : status;
  }
}

function labelOfPlan(plan: UndoPlan | undefined): string | null {
  return plan && plan.changes.length > 0 ? labelOf(plan.target) : null;
}

/** "move guide.k3p9x2ab" was labelled "move guide". */
function labelOf(gesture: string): string {
  return gesture.replace(/\.[^.]*$/, '');
}

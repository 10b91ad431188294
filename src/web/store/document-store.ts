import type { Revision } from '../../record/api.ts';
import { type Conflict, chooseDeed, chosenOperation, openConflicts } from '../../record/conflicts.ts';
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
import type { DocumentKind, FieldValue } from '../../record/schema.ts';
import { historyOf, planRedo, planUndo, type UndoPlan, undoGesture } from '../../record/undo.ts';
import { validateValue } from '../../record/validate.ts';
import type { Api } from './api.ts';
import type { LiveFeed } from './live-feed.ts';
import { missingThere } from './missing-there.ts';
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
  /** The gesture that undo would take back, or null. */
  undo: string | null;
  redo: string | null;
  conflicts: readonly Conflict[];
  /** What of the document the server cannot read as stored any more; undefined where all is good. */
  damage: string | undefined;
}

/** What undo or redo did: `held` are fields another device has changed since, which were left as they are. */
export interface UndoOutcome {
  done: boolean;
  gesture: string;
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
  /** The operation of that number, by which the server knows whether it is still the same log. */
  private lastId = '';
  /** Open for a log of this length; only what another device writes opens one. */
  private conflicts = { length: -1, open: [] as readonly Conflict[] };
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
  /** What undo and redo would take back, for a log of this length; reading them off the log takes a while. */
  private labels = { length: -1, undo: null as string | null, redo: null as string | null };

  private constructor(record: string, id: string, kind: DocumentKind, parts: StoreParts) {
    this.parts = parts;
    this.outboxName = `${record}.${id}`;
    this.document = emptyDocument(id, kind);
    this.sender = new Sender({
      post: async (operations) => this.count((await parts.api.append(id, operations)).accepted),
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
    store.take(unsent.sort(compareStamps));
    store.sender.enqueue(unsent);
    store.unwatch = parts.feed?.watch({
      document: id,
      after: () => store.lastSeq,
      lastId: () => store.lastId,
      received: (operations) => store.receive(operations, true),
      connected: () => store.sender.retryNow(),
      behind: () => void store.sendLost().catch(() => undefined),
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
  gesture(deed: string): Gesture {
    return { id: `${deed.replace(/[^\w:-]/g, '-').slice(0, 80)}.${makeId(this.parts.fillRandom, 8)}` };
  }

  /**
   * Writes values: here at once, on the server as soon as it can be reached. `gesture` is a deed's id
   * (src/words/deeds.ts) for a gesture of its own, or one from `gesture()`. With findings nothing was written.
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

  /** Settles a conflict: this value was chosen, whichever of the two it is. */
  choose({ path }: Conflict, value: FieldValue): void {
    const at = this.parts.now().toISOString();
    const by = { device: this.parts.device, gesture: this.gesture(chooseDeed).id, at };
    this.keepAndSend([chosenOperation(this.document, path, value, by)]);
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
    this.conflicts = { length: -1, open: [] };
    this.refresh();
  }

  /** Nobody looks any more. What is not sent yet still goes out, for as long as the page stands. */
  close(): void {
    this.unwatch?.();
    this.listeners.clear();
  }

  private carryOut(plan: UndoPlan | undefined): UndoOutcome {
    if (!plan) return { done: false, gesture: '', held: [] };
    if (plan.changes.length > 0) this.commit(undoGesture(plan, this.document.clock + 1), plan.changes);
    return { done: plan.changes.length > 0, gesture: plan.target, held: plan.held };
  }

  private commit(gesture: string, changes: readonly Change[]): void {
    const at = this.parts.now().toISOString();
    const operations = makeOperations(this.document, changes, { device: this.parts.device, gesture, at });
    this.keepAndSend(operations);
  }

  private keepAndSend(operations: readonly Operation[]): void {
    this.take(operations);
    this.keepInOutbox(operations);
    this.sender.enqueue(operations);
    this.refresh();
  }

  /** The server has less than it once acknowledged: an older file, a lost log. What this page holds goes there again. */
  private async sendLost(): Promise<void> {
    const { id } = this.document;
    const compared = await missingThere(this.parts.api, id, this.log);
    if (!compared) return;
    const { there, missing } = compared;
    this.hasUpTo(there.at(-1)?.seq ?? 0, there.at(-1)?.id ?? '');
    this.receive(there, true);
    this.keepAndSend(missing.filter((operation) => !this.sender.holds(operation.id)));
  }

  /** Operations from the server. */
  private receive(operations: readonly (Operation & { seq: number })[], live = false): void {
    for (const { seq, id } of operations) if (seq > this.lastSeq) this.hasUpTo(seq, id);
    this.take(operations);
    if (live) this.refresh();
  }

  /** What was acknowledged counts as had, where nothing of others lies between. */
  private count(accepted: readonly { id: string; seq: number }[]): void {
    for (const { id, seq } of accepted) if (seq === this.lastSeq + 1) this.hasUpTo(seq, id);
  }

  private hasUpTo(seq: number, id: string): void {
    this.lastSeq = seq;
    this.lastId = id;
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
      const undo = targetOf(planUndo(this.log, this.parts.device));
      const redo = targetOf(planRedo(this.log, this.parts.device));
      this.labels = { length: this.log.length, undo, redo };
    }
    const { undo, redo } = this.labels;
    if (this.conflicts.length !== this.log.length)
      this.conflicts = {
        length: this.log.length,
        open: sameOrNew(this.conflicts.open, openConflicts(this.log)),
      };
    const { document, damage } = this;
    return { document, save: this.saveStatus(), undo, redo, conflicts: this.conflicts.open, damage };
  }

  private saveStatus(): SaveStatus {
    const { status } = this.sender;
    if (status.kind === 'saved') this.outboxFailed = false;
    if (status.kind !== 'kept') return status;
    if (this.beingKept > 0) return { kind: 'saving', pending: status.pending };
    return this.outboxFailed ? { ...status, onlyOnPage: true } : status;
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

import type { OpeningAnswer, OperationsAnswer, Revision } from '../../record/api.ts';
import { type Conflict, chooseDeed, chosenOperation } from '../../record/conflicts.ts';
import { makeOperations } from '../../record/document.ts';
import { type FillRandom, makeId } from '../../record/identity.ts';
import {
  type Change,
  compareStamps,
  type Objection,
  type Operation,
  type Path,
} from '../../record/operation.ts';
import type { FieldValue } from '../../record/schema.ts';
import { historyOf, type UndoPlan, undoGesture } from '../../record/undo.ts';
import { validateValue } from '../../record/validate.ts';
import type { Api } from './api.ts';
import { DocumentLog } from './document-log.ts';
import { DocumentPast } from './document-past.ts';
import { KeptUnsent } from './kept-unsent.ts';
import type { LiveFeed } from './live-feed.ts';
import { missingThere } from './missing-there.ts';
import type { Outbox } from './outbox.ts';
import { type SaveStatus, Sender } from './sender.ts';
import type { Gesture, StoreSnapshot, UndoOutcome } from './store-snapshot.ts';

export interface StoreParts {
  api: Pick<Api, 'opening' | 'operationsAfter' | 'documentAfter' | 'append' | 'freezeRevision'>;
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
  private readonly log: DocumentLog;
  private readonly unsent: KeptUnsent;
  /** The history of before this page's part of it. */
  readonly past: DocumentPast;
  private damage: string | undefined;
  private snapshot: StoreSnapshot;
  private unwatch: (() => void) | undefined;

  private constructor({ record, document, standing }: OpeningAnswer, id: string, parts: StoreParts) {
    this.parts = parts;
    this.log = new DocumentLog(id, document.kind, standing);
    this.past = new DocumentPast(parts.api, this.log, () => this.refresh());
    this.unsent = new KeptUnsent(parts.outbox, `${record}.${id}`, () => {
      if (this.sender.status.kind === 'kept') this.refresh();
    });
    this.sender = new Sender({
      post: async (operations) => this.log.count((await parts.api.append(id, operations)).accepted),
      acknowledged: (operations) => this.unsent.remove(operations),
      changed: () => this.refresh(),
      retryFirstMs: parts.retryFirstMs,
    });
    this.snapshot = this.takeSnapshot();
  }

  /** Fetches the document, takes up what an earlier page left unsent, and follows what others do. */
  static async open(id: string, parts: StoreParts): Promise<DocumentStore> {
    const opening = await parts.api.opening(id);
    const store = new DocumentStore(opening, id, parts);
    let answer: OperationsAnswer = opening;
    store.log.receive(answer.operations);
    store.damage = answer.damage;
    while (answer.more) {
      answer = await parts.api.operationsAfter(id, answer.lastSeq);
      store.log.receive(answer.operations);
      store.damage ??= answer.damage;
    }
    const unsent = (await store.unsent.list()).filter(({ id }) => !store.log.has(id));
    store.log.take(unsent.sort(compareStamps));
    store.sender.enqueue(unsent);
    store.unwatch = parts.feed?.watch({
      document: id,
      after: () => store.log.lastSeq,
      lastId: () => store.log.lastId,
      received: (operations) => store.receive(operations),
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
    const findings = changes.flatMap(({ path, value }) => validateValue(this.log.document.kind, path, value));
    if (findings.length === 0)
      this.commit(typeof gesture === 'string' ? this.gesture(gesture).id : gesture.id, changes);
    return findings;
  }

  /** A new row's id. */
  newRowId(): string {
    return makeId(this.parts.fillRandom);
  }

  undo(): UndoOutcome {
    return this.carryOut(this.log.planUndo(this.parts.device));
  }

  redo(): UndoOutcome {
    return this.carryOut(this.log.planRedo(this.parts.device));
  }

  /** Every value written at a path, as far back as this page has read, the earliest first. */
  history(path: Path): Operation[] {
    return historyOf(this.log.all, path);
  }

  /** The history in the order of arrival, as far back as it was read; grows whenever the snapshot's document changes. */
  operations(): readonly Operation[] {
    return this.log.all;
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
    return this.parts.api.freezeRevision(this.log.document.id, engineVersion);
  }

  /** Settles a conflict: this value was chosen, whichever of the two it is. */
  choose({ path }: Conflict, value: FieldValue): void {
    const at = this.parts.now().toISOString();
    const by = { device: this.parts.device, gesture: this.gesture(chooseDeed).id, at };
    this.keepAndSend([chosenOperation(this.log.document, path, value, by)]);
  }

  retryNow(): void {
    this.sender.retryNow();
  }

  /** Gives up changes the server refused, and shows the document without them. */
  dropRefused(): void {
    const dropped = this.sender.dropRefused();
    this.unsent.remove(dropped);
    this.log.drop(dropped);
    this.refresh();
  }

  /** Nobody looks any more. What is not sent yet still goes out, for as long as the page stands. */
  close(): void {
    this.unwatch?.();
    this.listeners.clear();
  }

  private carryOut(plan: UndoPlan | undefined): UndoOutcome {
    if (!plan) return { done: false, gesture: '', held: [] };
    if (plan.changes.length > 0) this.commit(undoGesture(plan, this.log.document.clock + 1), plan.changes);
    return { done: plan.changes.length > 0, gesture: plan.target, held: plan.held };
  }

  private commit(gesture: string, changes: readonly Change[]): void {
    const at = this.parts.now().toISOString();
    const operations = makeOperations(this.log.document, changes, { device: this.parts.device, gesture, at });
    this.keepAndSend(operations);
  }

  private keepAndSend(operations: readonly Operation[]): void {
    this.log.take(operations);
    this.unsent.add(operations);
    this.sender.enqueue(operations);
    this.refresh();
  }

  /** The server has less than it once acknowledged: an older file, a lost log. What this page holds goes there again. */
  private async sendLost(): Promise<void> {
    const compared = await missingThere(this.parts.api, this.log.document.id, this.log.held);
    if (!compared) return;
    const { there, missing } = compared;
    this.log.hasUpTo(there.at(-1)?.seq ?? 0, there.at(-1)?.id ?? '');
    this.receive(there);
    this.keepAndSend(missing.filter((operation) => !this.sender.holds(operation.id)));
  }

  /** Operations from the server, live. */
  private receive(operations: readonly (Operation & { seq: number })[]): void {
    this.log.receive(operations);
    this.refresh();
  }

  private refresh(): void {
    this.snapshot = this.takeSnapshot();
    for (const listener of this.listeners) listener();
  }

  private takeSnapshot(): StoreSnapshot {
    const { document } = this.log;
    const { undo, redo, conflicts } = this.log.readOff(this.parts.device);
    const damage = this.damage ?? this.past.damage;
    const pastStates = this.past.fetched;
    return { document, save: this.saveStatus(), undo, redo, conflicts, damage, pastStates };
  }

  private saveStatus(): SaveStatus {
    const { status } = this.sender;
    if (status.kind === 'saved') this.unsent.failed = false;
    if (status.kind !== 'kept') return status;
    if (this.unsent.busy) return { kind: 'saving', pending: status.pending };
    return this.unsent.failed ? { ...status, onlyOnPage: true } : status;
  }
}

import { randomFillSync } from 'node:crypto';
import type { CreateRequest, DocumentAnswer, DocumentSummary, OperationsAnswer } from '../record/api.ts';
import { applyOperations, emptyDocument, makeOperations } from '../record/document.ts';
import { makeId } from '../record/identity.ts';
import type { Change, DocumentState, Operation, StoredOperation } from '../record/operation.ts';
import type { DocumentKind } from '../record/schema.ts';
import { validateOperation, validateValue } from '../record/validate.ts';
import type { ChangeFeed } from './change-feed.ts';
import { documentNotFound, RefusedError } from './errors.ts';
import type { Appended, Repository } from './repository.ts';

/** The shop's own document: settings that hold for every build. */
export const shopId = 'shop';
/** The writer's name of what the server writes itself; no browser's undo reaches it. */
const serverDevice = 'server';
/** Most operations in one answer; the page asks again for more. */
export const operationsPerAnswer = 5000;
const mostKindsKept = 10_000;

/** What the server does with the record: checks at the door, writes, and tells who listens. */
export class Keeper {
  readonly repository: Repository;
  readonly feed: ChangeFeed;
  private readonly now: () => Date;
  private readonly kinds = new Map<string, DocumentKind>();

  constructor(repository: Repository, feed: ChangeFeed, now: () => Date = () => new Date()) {
    this.repository = repository;
    this.feed = feed;
    this.now = now;
  }

  /** A new build or ticket with its first values. @throws RefusedError */
  async create(request: CreateRequest): Promise<DocumentSummary> {
    const changes = request.changes ?? [];
    const findings = changes.flatMap(({ path, value }) => validateValue(request.kind, path, value));
    if (findings.length > 0) throw new RefusedError(findings);
    return this.createFrom(request.kind, changes);
  }

  /** A new document with these values, written by the server. */
  async createFrom(kind: DocumentKind, changes: readonly Change[], id = newId()): Promise<DocumentSummary> {
    const at = this.timestamp();
    const createdAt: Change[] = kind !== 'shop' ? [{ path: ['about', '-', 'createdAt'], value: at }] : [];
    const operations = makeOperations(emptyDocument(id, kind), [...createdAt, ...changes], {
      device: serverDevice,
      gesture: 'create',
      at,
    });
    return this.createWith(kind, operations, id);
  }

  /** A new document with its history as given (already checked). */
  createWith(kind: DocumentKind, operations: readonly Operation[], id = newId()): Promise<DocumentSummary> {
    return this.repository.create({ id, kind, at: this.timestamp(), operations });
  }

  /** Checks and stores; resolves when it is on disk. @throws RefusedError, NotFoundError, ConflictError */
  async append(document: string, candidates: readonly unknown[]): Promise<Appended> {
    const kind = await this.kindOf(document);
    const findings = candidates.flatMap((candidate) => validateOperation(kind, candidate));
    if (findings.length > 0) throw new RefusedError(findings);
    const appended = await this.repository.append(document, candidates as Operation[], this.timestamp());
    if (appended.stored.length > 0) this.feed.publish(document, appended.stored);
    return appended;
  }

  /** Writes values in the server's own name, as one gesture. */
  async write(document: string, gesture: string, changes: readonly Change[]): Promise<void> {
    const at = this.timestamp();
    const operations = makeOperations(await this.state(document), changes, {
      device: `${serverDevice}-${newId(6)}`,
      gesture,
      at,
    });
    if (operations.length > 0) await this.append(document, operations);
  }

  /** Operations newer than a reader has; `look` where another process may have written. At most so many at once. */
  async newOperations(document: string, after: number, look: boolean): Promise<StoredOperation[]> {
    const recent = look ? undefined : this.feed.recentAfter(document, after);
    return recent ?? this.repository.operationsAfter(document, after, operationsPerAnswer);
  }

  /** A document keeps its kind, and none is ever taken out of an open record. */
  private async kindOf(document: string): Promise<DocumentKind> {
    const known = this.kinds.get(document);
    if (known) return known;
    const { kind } = await this.findOrThrow(document);
    if (this.kinds.size >= mostKindsKept) this.kinds.clear();
    this.kinds.set(document, kind);
    return kind;
  }

  async findOrThrow(document: string): Promise<DocumentSummary> {
    return (await this.repository.find(document)) ?? documentNotFound(document);
  }

  async state(document: string): Promise<DocumentState> {
    const { kind } = await this.findOrThrow(document);
    return applyOperations(emptyDocument(document, kind), await this.history(document));
  }

  /** All operations in the order of arrival. */
  async history(document: string): Promise<StoredOperation[]> {
    const { lastSeq } = await this.findOrThrow(document);
    return this.repository.operationsAfter(document, 0, lastSeq);
  }

  async answer(id: string): Promise<DocumentAnswer> {
    const document = await this.findOrThrow(id);
    const { cells, clock } = await this.state(id);
    return { document, cells: [...cells], clock, lastSeq: document.lastSeq };
  }

  async operationsAfter(id: string, after: number): Promise<OperationsAnswer> {
    const document = await this.findOrThrow(id);
    const operations = await this.repository.operationsAfter(id, after, operationsPerAnswer);
    const lastSeq = operations.at(-1)?.seq ?? Math.min(after, document.lastSeq);
    const more = operations.length === operationsPerAnswer;
    return { record: await this.repository.identity(), document, operations, lastSeq, more };
  }

  /** Now, as the record notes it. */
  timestamp(): string {
    return this.now().toISOString();
  }

  /** The shop's document, made when first asked for. */
  async shop(): Promise<DocumentSummary> {
    const standing = await this.repository.find(shopId);
    if (standing) return standing;
    // Two pages may ask at once; the other made it then.
    return this.createFrom('shop', [], shopId).catch(() => this.findOrThrow(shopId));
  }
}

/** An id of a document, in the same form rows have. */
export function newId(letters = 12): string {
  return makeId((bytes) => randomFillSync(bytes), letters);
}

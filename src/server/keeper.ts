import { randomFillSync } from 'node:crypto';
import type {
  CreateRequest,
  DocumentAnswer,
  DocumentSummary,
  OpeningAnswer,
  OperationsAnswer,
} from '../record/api.ts';
import { emptyDocument, makeOperations } from '../record/document.ts';
import { makeId } from '../record/identity.ts';
import type { Change, DocumentState, Operation, Path, StoredOperation } from '../record/operation.ts';
import type { DocumentKind } from '../record/schema.ts';
import { validateOperation, validateValue } from '../record/validate.ts';
import type { ChangeFeed } from './change-feed.ts';
import { documentNotFound, RefusedError } from './errors.ts';
import { Histories, type SnapshotLimits } from './histories.ts';
import type { Appended, Pace, Repository } from './repository.ts';
import { DamagedDocument } from './vouch/check-operations.ts';

/** The shop's own document: settings that hold for every build. */
export const shopId = 'shop';
/** The document of invented data that is there from the first start; no build of the builder's own ever has this id. */
export const demoId = 'demo';

/** A build or repair of the builder's. */
export function isOwn(document: string): boolean {
  return !/^demo(?:-|$)/.test(document) && document !== shopId;
}

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
  private readonly histories: Histories;
  private readonly kinds = new Map<string, DocumentKind>();

  constructor(
    repository: Repository,
    feed: ChangeFeed,
    now: () => Date = () => new Date(),
    snapshots?: SnapshotLimits,
  ) {
    this.histories = new Histories(repository, snapshots);
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
  async createWith(
    kind: DocumentKind,
    operations: readonly Operation[],
    id = newId(),
    pace: Pace = {},
  ): Promise<DocumentSummary> {
    const created = await this.repository.create({ id, kind, at: this.timestamp(), operations }, pace);
    // A long one has its snapshot before anybody opens it.
    await this.histories.standing(created);
    return created;
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

  /**
   * Takes what ever stood at these paths out for good. Open pages are told by a change that empties the fields; it is
   * what the history keeps.
   */
  async erase(document: string, paths: readonly Path[]): Promise<DocumentSummary> {
    await this.write(
      document,
      'erase',
      paths.map((path) => ({ path, value: null })),
    );
    await this.repository.erase(document, paths);
    return this.findOrThrow(document);
  }

  /** Operations newer than a reader has; `look` where another process may have written. At most so many at once. */
  async newOperations(document: string, after: number, look: boolean): Promise<StoredOperation[]> {
    const recent = look ? undefined : this.feed.recentAfter(document, after);
    return recent ?? (await this.readable(document, after)).operations;
  }

  /** Whether the operation of this number is the one of this id; what cannot be read is not called another. */
  async holds(document: string, seq: number, id: string | undefined): Promise<boolean> {
    if (id === undefined || seq === 0) return true;
    const { operations, damage } = await this.readable(document, seq - 1, 1);
    return damage !== undefined || operations[0]?.id === id;
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
    return this.histories.state(await this.findOrThrow(document));
  }

  /** All operations in the order of arrival. @throws DamagedDocument */
  async history(document: string): Promise<StoredOperation[]> {
    return this.histories.whole(await this.findOrThrow(document));
  }

  async answer(id: string): Promise<DocumentAnswer> {
    return this.answerAfter(id, Number.MAX_SAFE_INTEGER);
  }

  /** As its first `seq` operations left it. */
  async answerAfter(id: string, seq: number): Promise<DocumentAnswer> {
    const document = await this.findOrThrow(id);
    const { cells, clock } = await this.histories.stateAfter(document, seq);
    return { document, cells: [...cells], clock, lastSeq: Math.min(seq, document.lastSeq) };
  }

  /** What a page opens a document with. */
  async opening(id: string): Promise<OpeningAnswer> {
    const standing = await this.histories.standing(await this.findOrThrow(id));
    const answer = await this.operationsAfter(id, standing.seq);
    return { ...answer, standing };
  }

  async operationsAfter(id: string, after: number, most = operationsPerAnswer): Promise<OperationsAnswer> {
    const document = await this.findOrThrow(id);
    const { operations, lastRead, damage } = await this.readable(id, after, most);
    const more = lastRead - after >= most;
    const record = await this.repository.identity();
    const lastSeq = Math.max(lastRead, Math.min(after, document.lastSeq));
    const missing = !more && document.lastSeq > lastSeq ? missingWords : undefined;
    const said = damage ?? missing ?? (document.damaged && damagedSummary);
    return { record, document, operations, lastSeq, more, ...(said ? { damage: said } : {}) };
  }

  /** At most one answer's operations; of a damaged document those that are good, and what is wrong with the others. */
  private async readable(document: string, after: number, most = operationsPerAnswer) {
    try {
      const operations = await this.repository.operationsAfter(document, after, most);
      return { operations, lastRead: operations.at(-1)?.seq ?? after, damage: undefined };
    } catch (error) {
      if (!(error instanceof DamagedDocument)) throw error;
      const lastRead = Math.max(...error.bad, error.good.at(-1)?.seq ?? after);
      return { operations: error.good, lastRead, damage: error.message };
    }
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

const damagedSummary =
  'What the shelf says of this document cannot be read as stored: the disk or the file is damaged. “Repair” on the shelf brings it back';
const missingWords =
  'The last changes of this document are missing: the disk or the file is damaged. “Repair” on the shelf takes them from the newest good backup';

/** An id of a document, in the same form rows have. */
export function newId(letters = 12): string {
  return makeId((bytes) => randomFillSync(bytes), letters);
}

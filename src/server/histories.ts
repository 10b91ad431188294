import { setImmediate as breathe } from 'node:timers/promises';
import type { DocumentSummary } from '../record/api.ts';
import { applyOperations } from '../record/document.ts';
import type { DocumentState, StoredOperation } from '../record/operation.ts';
import { nothingStanding, type Standing, standingAfter, stateOf } from '../record/standing.ts';
import type { Repository } from './repository.ts';
import { DamagedDocument } from './vouch/check-operations.ts';

/** Most operations read at one go by the server itself. */
const operationsPerPiece = 2000;

export interface SnapshotLimits {
  /** The newest operations, which no snapshot swallows: what a page lists and undoes at once. */
  newest: number;
  /** A snapshot is made, or made anew, where more would have to be replayed. */
  mostReplayed: number;
}
const usualLimits: SnapshotLimits = { newest: 1000, mostReplayed: 3000 };

type Document = Pick<DocumentSummary, 'id' | 'kind' | 'lastSeq'>;

/** Reads histories in pieces, so that a long one keeps nobody waiting, and from a snapshot where that will do. */
export class Histories {
  private readonly repository: Repository;
  private readonly limits: SnapshotLimits;
  constructor(repository: Repository, limits: SnapshotLimits = usualLimits) {
    this.repository = repository;
    this.limits = limits;
  }

  /** All operations in the order of arrival. @throws DamagedDocument */
  async whole(document: Document): Promise<StoredOperation[]> {
    const history: StoredOperation[] = [];
    for await (const piece of this.pieces(document, 0, document.lastSeq)) history.push(...piece);
    return history;
  }

  /** @throws DamagedDocument where what is replayed is */
  async state(document: Document): Promise<DocumentState> {
    return this.stateAfter(document, document.lastSeq);
  }

  /** As its first `seq` operations left it. @throws DamagedDocument */
  async stateAfter(document: Document, seq: number): Promise<DocumentState> {
    const kept = await this.standing(document);
    const from = kept.seq <= seq ? kept : nothingStanding;
    let state = stateOf(from, document.id, document.kind);
    for await (const piece of this.pieces(document, from.seq, Math.min(seq, document.lastSeq)))
      state = applyOperations(state, piece);
    return state;
  }

  /**
   * What all but the newest operations come down to; of a short history, of a damaged one and of the shop's own, whose
   * past states are asked for by the day, nothing.
   */
  async standing(document: Document): Promise<Standing> {
    const { id, kind, lastSeq } = document;
    if (kind === 'shop' || lastSeq <= this.limits.mostReplayed) return nothingStanding;
    const kept = (await this.repository.snapshot(id)) ?? nothingStanding;
    if (lastSeq - kept.seq <= this.limits.mostReplayed) return kept;
    const seq = lastSeq - this.limits.newest;
    try {
      return await this.repository.makeSnapshot(id, seq, () => this.standingAt(document, kept, seq));
    } catch (error) {
      if (!(error instanceof DamagedDocument)) throw error;
      return nothingStanding;
    }
  }

  private async standingAt(document: Document, from: Standing, seq: number): Promise<Standing> {
    let standing = from;
    for await (const piece of this.pieces(document, from.seq, seq)) standing = standingAfter(standing, piece);
    return standing;
  }

  /** Operations after a place, up to and with another. @throws DamagedDocument where one of them is missing */
  private async *pieces(document: Document, after: number, upTo: number) {
    for (let read = after; read < upTo; ) {
      const most = Math.min(operationsPerPiece, upTo - read);
      const piece = await this.repository.operationsAfter(document.id, read, most);
      if (piece.length === 0) throw new DamagedDocument(document.id, { good: [], bad: [upTo] });
      read = piece.at(-1)!.seq;
      yield piece;
      if (read < upTo) await breathe();
    }
  }
}

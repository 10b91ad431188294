import { applyOperations, emptyDocument } from './document.ts';
import {
  byPath,
  compareStamps,
  type DocumentState,
  deviceFamily,
  type Operation,
  type StoredOperation,
} from './operation.ts';
import type { DocumentKind } from './schema.ts';

/**
 * What the first `seq` operations of a document come down to: of each path the one whose value stands, and what tells
 * whether another device knew of it. The state after them, and after whatever follows, is that of the whole history.
 */
export interface Standing {
  seq: number;
  operations: readonly StoredOperation[];
}

export const nothingStanding: Standing = { seq: 0, operations: [] };

/** @param operations those that follow, in order of `seq` */
export function standingAfter(before: Standing, operations: readonly StoredOperation[]): Standing {
  return {
    seq: operations.at(-1)?.seq ?? before.seq,
    operations: byPath([...before.operations, ...operations])
      .flatMap(whatStands)
      .sort((a, b) => a.seq - b.seq),
  };
}

/** Its clock is right too: the operation of the greatest clock stands at its own path. */
export function stateOf({ operations }: Standing, id: string, kind: DocumentKind): DocumentState {
  return applyOperations(emptyDocument(id, kind), operations);
}

/** Of one path: the operation that stands, where its device began to write, and the last of another before that. */
function whatStands<T extends Operation>(written: readonly T[]): T[] {
  const sorted = written.toSorted(compareStamps);
  const standing = sorted.at(-1)!;
  const family = deviceFamily(standing.device);
  const other = sorted.findLastIndex(({ device }) => deviceFamily(device) !== family);
  const kept = new Set([...(other < 0 ? [] : [sorted[other]]), sorted[other + 1], standing]);
  return [...kept];
}

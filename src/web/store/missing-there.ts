import type { Operation, StoredOperation } from '../../record/operation.ts';
import type { Api } from './api.ts';

export interface Comparison {
  /** All the server has, in its order. */
  there: StoredOperation[];
  /** What this page has and the server has not: it was acknowledged once, and lost there. */
  missing: Operation[];
}

/**
 * Reads the server's whole log of a document and compares it with this page's. Undefined where the server cannot
 * read its own: what it lacks is then not known.
 */
export async function missingThere(
  api: Pick<Api, 'operationsAfter'>,
  document: string,
  log: readonly Operation[],
): Promise<Comparison | undefined> {
  const there: StoredOperation[] = [];
  let answer = await api.operationsAfter(document, 0);
  for (;;) {
    if (answer.damage) return undefined;
    there.push(...answer.operations);
    if (!answer.more) break;
    answer = await api.operationsAfter(document, answer.lastSeq);
  }
  const ids = new Set(there.map(({ id }) => id));
  return { there, missing: log.filter(({ id }) => !ids.has(id)) };
}

import { createHash } from 'node:crypto';
import type { Revision, RevisionAnswer } from '../record/api.ts';
import { applyOperations, emptyDocument } from '../record/document.ts';
import type { DocumentState, Operation } from '../record/operation.ts';
import type { FieldValue } from '../record/schema.ts';
import type { Keeper } from './keeper.ts';

/** Letters of a revision's name: short enough to print and to read aloud. */
const revisionLetters = 10;

/** Freezes the document as it stands; standing as it did before, it has the revision of before. */
export async function freeze(keeper: Keeper, document: string, engineVersion: string): Promise<Revision> {
  const { kind, lastSeq: seq } = await keeper.findOrThrow(document);
  const { cells } = await keeper.answerAfter(document, seq);
  const state = { ...emptyDocument(document, kind), cells: new Map(cells) };
  const madeAt = keeper.timestamp();
  return keeper.repository.addRevision(frozen(document, state, { seq, madeAt, engineVersion }));
}

/** A revision of a state. */
export function frozen(
  document: string,
  state: DocumentState,
  made: { seq: number; madeAt: string; engineVersion: string },
): RevisionAnswer {
  const values = frozenValues(state);
  const hash = createHash('sha256').update(JSON.stringify(values)).digest('hex');
  return { document, revision: hash.slice(0, revisionLetters), ...made, values };
}

/** In the order of the history, each from the state before it: a thousand prints do not replay it a thousand times. */
export function frozenStates(
  empty: DocumentState,
  history: readonly Operation[],
  revisions: readonly Omit<Revision, 'document'>[],
): RevisionAnswer[] {
  let [state, seq] = [empty, 0];
  return revisions
    .toSorted((a, b) => a.seq - b.seq)
    .map((made) => {
      state = applyOperations(state, history.slice(seq, made.seq));
      seq = Math.max(seq, made.seq);
      return frozen(empty.id, state, made);
    });
}

/** All values by path, in one order. A print notes itself in the record; that does not make another revision. */
function frozenValues(state: DocumentState): Record<string, FieldValue> {
  const entries = [...state.cells]
    .filter(([key, cell]) => cell.value !== null && !key.startsWith('prints/'))
    .map(([key, cell]) => [key, cell.value] as const);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)));
}

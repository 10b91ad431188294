import { applyOperations, emptyDocument, sameValue } from './document.ts';
import { type Change, type DocumentState, type Operation, pathOf } from './operation.ts';
import type { DocumentKind, FieldValue } from './schema.ts';

/** One gesture of the history: what somebody changed at one go. */
export interface PastGesture {
  gesture: string;
  device: string;
  at: string;
  /** How many operations of the log lead up to its end. */
  upTo: number;
  changes: Operation[];
}

/**
 * The history by gestures in the order of arrival; operations of one gesture that others interrupted are apart.
 * @param before how many operations precede this part of the log
 */
export function pastGestures(log: readonly Operation[], before = 0): PastGesture[] {
  const past: PastGesture[] = [];
  for (const [index, operation] of log.entries()) {
    const last = past.at(-1);
    if (last && last.gesture === operation.gesture && last.device === operation.device) {
      last.changes.push(operation);
      last.upTo = before + index + 1;
    } else {
      const { gesture, device, at } = operation;
      past.push({ gesture, device, at, upTo: before + index + 1, changes: [operation] });
    }
  }
  return past;
}

/** The document as the first `upTo` operations left it, which followed on `before`. */
export function stateAfter(
  log: readonly Operation[],
  upTo: number,
  kind: DocumentKind,
  before: DocumentState = emptyDocument('past', kind),
): DocumentState {
  return applyOperations(before, log.slice(0, upTo));
}

/** The document as it was at an instant by the clocks of those who wrote: as near as their clocks agree. */
export function stateAt(log: readonly Operation[], at: string, kind: DocumentKind): DocumentState {
  const atMs = Date.parse(at);
  return applyOperations(
    emptyDocument('past', kind),
    log.filter((operation) => Date.parse(operation.at) <= atMs),
  );
}

/**
 * The changes that make `now` say what `then` said; written as one gesture they can be undone like any other.
 * Prints stay: paper that left the printer is a fact.
 */
export function changesBackTo(then: DocumentState, now: DocumentState): (Change & { from: FieldValue })[] {
  const keys = new Set([...now.cells.keys(), ...then.cells.keys()]);
  return [...keys]
    .filter((key) => !key.startsWith('prints/') && key !== 'about/-/createdAt')
    .map((key) => ({
      path: pathOf(key),
      from: now.cells.get(key)?.value ?? null,
      value: then.cells.get(key)?.value ?? null,
    }))
    .filter(({ from, value }) => !sameValue(from, value));
}

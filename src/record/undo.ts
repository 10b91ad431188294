import { type Change, compareStamps, deviceFamily, type Operation, type Path, pathKey } from './operation.ts';
import type { FieldValue } from './schema.ts';

/**
 * Undo is not a deletion: it appends the inverse of one of the device's own gestures, under a gesture name that
 * says so (`undo:<number>:<gesture>`). What can be undone and redone is therefore read off the log alone, and
 * survives a reload.
 */
export interface UndoPlan {
  verb: 'undo' | 'redo';
  /** The gesture taken back, or done again. */
  target: string;
  changes: Change[];
  /** Left as they are, since another device has changed them after the gesture. */
  held: Path[];
}

/** What undo would do now; undefined when nothing of this device is left to undo. */
export function planUndo(log: readonly Operation[], device: string): UndoPlan | undefined {
  return plan('undo', log, device);
}

/** What redo would do now; a new gesture after an undo leaves nothing to redo. */
export function planRedo(log: readonly Operation[], device: string): UndoPlan | undefined {
  return plan('redo', log, device);
}

/** The gesture name under which a plan is written; `clock` makes it unique. */
export function undoGesture(undo: UndoPlan, clock: number): string {
  return `${undo.verb}:${clock}:${undo.target}`;
}

/** All operations ever written at a path, the earliest first. */
export function historyOf(log: readonly Operation[], path: Path): Operation[] {
  const key = pathKey(path);
  return log.filter((operation) => pathKey(operation.path) === key).sort(compareStamps);
}

interface Trace {
  path: Path;
  before: FieldValue;
  after: FieldValue;
  undone: boolean;
  /** The latest operation of the gesture, its undo or its redo at this path. */
  latest: Operation;
}
type Traces = Map<string, Trace>;

/** Gestures that changed nothing which may still be taken back are passed over; what they hold is reported. */
function plan(verb: 'undo' | 'redo', log: readonly Operation[], device: string): UndoPlan | undefined {
  const { done, undone } = replayOwn(log, device);
  const foreign = latestForeign(log, device);
  const held: Path[] = [];
  for (const [target, traces] of (verb === 'undo' ? done : undone).toReversed()) {
    const changes: Change[] = [];
    for (const [key, trace] of traces) {
      if (trace.undone !== (verb === 'redo')) continue;
      const other = foreign.get(key);
      if (other && compareStamps(other, trace.latest) > 0) held.push(trace.path);
      else changes.push({ path: trace.path, value: verb === 'undo' ? trace.before : trace.after });
    }
    if (changes.length > 0) return { verb, target, changes, held };
  }
  return held.length > 0 ? { verb, target: '', changes: [], held } : undefined;
}

/** The device's gestures still standing, and those undone, each the oldest first. */
function replayOwn(log: readonly Operation[], device: string) {
  const done = new Map<string, Traces>();
  const undone = new Map<string, Traces>();
  for (const [gesture, operations] of ownGestures(log, device)) {
    const [, verb, target] = /^(undo|redo):\d+:(.*)$/s.exec(gesture) ?? [];
    if (verb === undefined) {
      done.set(gesture, tracesOf(operations));
      undone.clear();
      continue;
    }
    const [from, to] = verb === 'undo' ? [done, undone] : [undone, done];
    const traces = from.get(target);
    if (!traces) continue;
    for (const operation of operations) {
      const trace = traces.get(pathKey(operation.path));
      if (trace) Object.assign(trace, { undone: verb === 'undo', latest: operation });
    }
    from.delete(target);
    to.set(target, traces);
  }
  return { done: [...done], undone: [...undone] };
}

function ownGestures(log: readonly Operation[], device: string): Map<string, Operation[]> {
  const family = deviceFamily(device);
  const own = log.filter((operation) => deviceFamily(operation.device) === family).sort(compareStamps);
  const gestures = new Map<string, Operation[]>();
  for (const operation of own) {
    const operations = gestures.get(operation.gesture);
    if (operations) operations.push(operation);
    else gestures.set(operation.gesture, [operation]);
  }
  return gestures;
}

/** A gesture may write a path many times (a drag): before is the first old value, after the last new one. */
function tracesOf(operations: readonly Operation[]): Traces {
  const traces: Traces = new Map();
  for (const operation of operations) {
    const key = pathKey(operation.path);
    const earlier = traces.get(key);
    traces.set(key, {
      path: operation.path,
      before: earlier ? earlier.before : operation.old,
      after: operation.value,
      undone: false,
      latest: operation,
    });
  }
  return traces;
}

function latestForeign(log: readonly Operation[], device: string): Map<string, Operation> {
  const family = deviceFamily(device);
  const latest = new Map<string, Operation>();
  for (const operation of log) {
    if (deviceFamily(operation.device) === family) continue;
    const key = pathKey(operation.path);
    const standing = latest.get(key);
    if (!standing || compareStamps(operation, standing) > 0) latest.set(key, operation);
  }
  return latest;
}

/**
 * What has changed under work that was already done: paper that was printed, glue, wraps, a coat.
 * Everything on the bench follows from the record, so that moving a mark moves its wraps in silence; what is on paper
 * or on the rod does not move, and the builder is told what differs from it.
 */
import type { Assign } from '../engine/guides/bag-sorting.ts';
import type { Wrap } from '../engine/wraps/plan-wraps.ts';
import type { DocumentState, Operation } from './operation.ts';
import { type HandleLength, type RodAsRead, type RodValues, rodOf } from './rod-as-read.ts';
import { nothingStanding, type Standing } from './standing.ts';

export type Work = 'marks' | 'wraps' | 'rack' | 'handle' | 'finish';
/** A sheet by its name, or work on the rod. */
export type Deed = keyof typeof printed | 'handle-glued' | 'last-wrap' | 'last-coat';
export interface WorkDone {
  work: Work;
  deed: Deed;
  at: string;
  /** How many operations of the log lead up to it. */
  upTo: number;
}
/** One thing that differs now, with what it was. */
export type Change =
  | { kind: 'section-new'; section: string }
  | { kind: 'section-length'; section: string; lengthM: number; wasM: number }
  | { kind: 'joint-depth'; section: string; deeperM: number }
  | { kind: 'guide-count'; count: number; was: number }
  | { kind: 'guide-moved'; guide: number; towardsButtM: number; fromTipM: number }
  | { kind: 'guide-size'; guide: number; name: string; was: string }
  /** Numbers in the bag; undefined: none of it. */
  | { kind: 'rack-place'; place: number; number: number | undefined; was: number | undefined }
  | { kind: 'handle-length'; what: HandleLength; lengthM: number; wasM: number | undefined }
  | { kind: 'wrap-new' | 'wrap-gone'; wrap: string }
  | { kind: 'wrap-length'; wrap: string; lengthM: number; wasM: number }
  | ValueChange<keyof RodValues>;
export type ValueChange<K extends keyof RodValues> = K extends keyof RodValues
  ? { kind: 'value'; what: K; now: RodValues[K]; was: RodValues[K] }
  : never;

/**
 * The latest of each kind of work that stands on paper or on the rod.
 * @param before what precedes this part of the log
 */
export function workDone(log: readonly Operation[], before: Standing = nothingStanding): WorkDone[] {
  const done = new Map<Deed, WorkDone>();
  const note = ({ path, value, at }: Operation, upTo: number) => {
    const found = value === null || value === false ? undefined : doneBy(path, value);
    if (found) done.set(found.deed, { ...found, at, upTo });
  };
  for (const operation of before.operations) note(operation, operation.seq);
  for (const [index, operation] of log.entries()) note(operation, before.seq + index + 1);
  return [...done.values()];
}

const printed = {
  strips: 'marks',
  marks: 'marks',
  wraps: 'wraps',
  rack: 'rack',
  finish: 'finish',
  bench: 'wraps',
} as const satisfies Record<string, Work>;

function doneBy(
  [collection, row, field]: Operation['path'],
  value: unknown,
): Pick<WorkDone, 'work' | 'deed'> | undefined {
  if (collection === 'prints' && field === 'sheet') {
    const sheet = String(value);
    if (!Object.hasOwn(printed, sheet)) return undefined;
    const deed = sheet as keyof typeof printed;
    return { work: printed[deed], deed };
  }
  if (collection === 'handle' && row === '-' && field === 'gluedAt')
    return { work: 'handle', deed: 'handle-glued' };
  if (collection === 'benchDone' && field === 'task' && String(value).startsWith('wrap-'))
    return { work: 'wraps', deed: 'last-wrap' };
  if (collection === 'coats' && field === 'brushedAt') return { work: 'finish', deed: 'last-coat' };
  return undefined;
}

export interface SinceOptions {
  /** Fills in what the shop did at that instant where the build says nothing; without an instant, what it does now. */
  habits?(state: DocumentState, at?: string): DocumentState;
  /** Solves who of the bag goes where; left out: the bag is not sorted again. */
  assign?: Assign;
}

/** What differs now from what that work was done by, which is how the build stood `then`; empty: all still stands. */
export function changedSince(
  then: DocumentState,
  done: WorkDone,
  now: DocumentState,
  { habits = (state) => state, assign }: SinceOptions = {},
): Change[] {
  const [before, after] = [rodOf(habits(then, done.at), assign), rodOf(habits(now), assign)];
  if (!before || !after) return [];
  const marks = [...sectionChanges(before, after), ...guideChanges(before, after)];
  switch (done.work) {
    case 'marks':
      return marks;
    case 'rack':
      return [...sizeChanges(before, after), ...rackChanges(before, after)];
    case 'handle':
      return handleChanges(before, after);
    case 'finish':
      return [...marks, ...wrapChanges(before, after), ...valueChanges(before.finish, after.finish)];
    default:
      return [...marks, ...wrapChanges(before, after), ...valueChanges(before.thread, after.thread)];
  }
}

/** Half a millimetre is no more than the pencil is thick. */
const pencilM = 0.0005;
const differ = (a = 0, b = 0) => Math.abs(a - b) > pencilM;

function sectionChanges(before: RodAsRead, after: RodAsRead): Change[] {
  return after.sections.flatMap(({ id, name: section, lengthM, overlapM }): Change[] => {
    const old = before.sections.find((one) => one.id === id);
    if (!old) return [{ kind: 'section-new', section }];
    const changes: Change[] = [];
    if (differ(old.lengthM, lengthM))
      changes.push({ kind: 'section-length', section, lengthM, wasM: old.lengthM });
    if (differ(old.overlapM, overlapM))
      changes.push({ kind: 'joint-depth', section, deeperM: overlapM - old.overlapM });
    return changes;
  });
}

function countChanges(before: RodAsRead, after: RodAsRead): Change[] {
  const [was, count] = [before.guides.length, after.guides.length];
  return was === count ? [] : [{ kind: 'guide-count', count, was }];
}

function guideChanges(before: RodAsRead, after: RodAsRead): Change[] {
  const moved = after.guides.flatMap(({ id, stationM }, index): Change[] => {
    const old = before.guides.find((guide) => guide.id === id);
    if (old?.stationM === undefined || stationM === undefined || !differ(old.stationM, stationM)) return [];
    const towardsButtM = stationM - old.stationM;
    return [{ kind: 'guide-moved', guide: index + 1, towardsButtM, fromTipM: stationM }];
  });
  return [...countChanges(before, after), ...moved];
}

function sizeChanges(before: RodAsRead, after: RodAsRead): Change[] {
  const counts = countChanges(before, after);
  if (counts.length > 0) return counts;
  return after.guides.flatMap(({ name }, index): Change[] => {
    const was = before.guides[index].name;
    return name === was ? [] : [{ kind: 'guide-size', guide: index + 1, name, was }];
  });
}

/** Which of the bag goes elsewhere now. */
function rackChanges(before: RodAsRead, after: RodAsRead): Change[] {
  return after.rack.flatMap(({ guide, number }): Change[] => {
    const old = before.rack.find((place) => place.guide === guide);
    if (!old || old.number === number) return [];
    return [{ kind: 'rack-place', place: guide, number, was: old.number }];
  });
}

function valueChanges<V extends Partial<RodValues>>(before: V, after: V): Change[] {
  return (Object.keys(after) as (keyof V & keyof RodValues)[]).flatMap((what) => {
    const [was, now] = [before[what], after[what]];
    if (JSON.stringify(was) === JSON.stringify(now)) return [];
    return [{ kind: 'value', what, now, was } as Change];
  });
}

function handleChanges(before: RodAsRead, after: RodAsRead): Change[] {
  const lengths = (Object.keys(after.handle) as HandleLength[]).flatMap((what): Change[] => {
    const [wasM, lengthM] = [before.handle[what], after.handle[what]];
    if (lengthM === undefined || !differ(wasM, lengthM)) return [];
    return [{ kind: 'handle-length', what, lengthM, wasM }];
  });
  return [...lengths, ...valueChanges(before.glue, after.glue)];
}

/** Wraps that changed their width, came or went; those that only moved with their guide are said there. */
function wrapChanges(before: RodAsRead, after: RodAsRead): Change[] {
  const width = ({ fromTipM, toTipM }: Wrap) => toTipM - fromTipM;
  const old = new Map(before.wraps.map((wrap) => [wrap.id, wrap]));
  const now = new Set(after.wraps.map(({ id }) => id));
  const gone = before.wraps
    .filter(({ id }) => !now.has(id))
    .map(({ id }): Change => ({ kind: 'wrap-gone', wrap: id }));
  const changed = after.wraps.flatMap((wrap): Change[] => {
    const was = old.get(wrap.id);
    if (!was) return [{ kind: 'wrap-new', wrap: wrap.id }];
    if (!differ(width(was), width(wrap))) return [];
    return [{ kind: 'wrap-length', wrap: wrap.id, lengthM: width(wrap), wasM: width(was) }];
  });
  return [...changed, ...gone];
}

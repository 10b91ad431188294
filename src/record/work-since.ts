/**
 * What has changed under work that was already done: paper that was printed, glue, wraps, a coat.
 * Everything on the bench follows from the record, so that moving a mark moves its wraps in silence; what is on paper
 * or on the rod does not move, and the builder is told what differs from it.
 */
import { bothLengths } from '../engine/bench/bench-finding.ts';
import type { Assign } from '../engine/guides/bag-sorting.ts';
import { formatMm } from '../engine/units/format-quantity.ts';
import type { Wrap } from '../engine/wraps/plan-wraps.ts';
import type { DocumentState, Operation } from './operation.ts';
import { stateAfter } from './past.ts';
import { type RodAsRead, rodOf, type WrittenValue } from './rod-as-read.ts';

export type Work = 'marks' | 'wraps' | 'rack' | 'handle' | 'finish';
export interface WorkDone {
  work: Work;
  /** `the strips were printed`. */
  words: string;
  at: string;
  /** How many operations of the log lead up to it. */
  upTo: number;
}

/** The latest of each kind of work that stands on paper or on the rod. */
export function workDone(log: readonly Operation[]): WorkDone[] {
  const done = new Map<string, WorkDone>();
  for (const [index, { path, value, at }] of log.entries()) {
    const found = value === null || value === false ? undefined : doneBy(path, value);
    if (found) done.set(found.words, { ...found, at, upTo: index + 1 });
  }
  return [...done.values()];
}

function doneBy(
  [collection, row, field]: Operation['path'],
  value: unknown,
): Pick<WorkDone, 'work' | 'words'> | undefined {
  if (collection === 'prints' && field === 'sheet') return printed[String(value)];
  if (collection === 'handle' && row === '-' && field === 'gluedAt')
    return { work: 'handle', words: 'the handle was glued' };
  if (collection === 'benchDone' && field === 'task' && String(value).startsWith('wrap-')) {
    return { work: 'wraps', words: 'the last wrap was ticked off' };
  }
  if (collection === 'coats' && field === 'brushedAt')
    return { work: 'finish', words: 'the last coat was brushed on' };
  return undefined;
}
const printed: Record<string, Pick<WorkDone, 'work' | 'words'>> = {
  strips: { work: 'marks', words: 'the strips were printed' },
  marks: { work: 'marks', words: 'the list of marks was printed' },
  wraps: { work: 'wraps', words: 'the wrap sheet was printed' },
  rack: { work: 'rack', words: 'the rack sheet was printed' },
  finish: { work: 'finish', words: 'the finish sheet was printed' },
  bench: { work: 'wraps', words: 'the bench sheet was printed' },
};

export interface SinceOptions {
  /** Fills in what the shop did at that instant where the build says nothing; without an instant, what it does now. */
  habits?(state: DocumentState, at?: string): DocumentState;
  /** Solves who of the bag goes where; left out: the bag is not sorted again. */
  assign?: Assign;
}

/** What differs now from what that work was done by, in the builder's words; empty: all still stands. */
export function changedSince(
  log: readonly Operation[],
  done: WorkDone,
  now: DocumentState,
  { habits = (state) => state, assign }: SinceOptions = {},
): string[] {
  const then = habits(stateAfter(log, done.upTo, 'build'), done.at);
  const [before, after] = [rodOf(then, assign), rodOf(habits(now), assign)];
  if (!before || !after) return [];
  const marks = [...sectionWords(before, after), ...guideWords(before, after)];
  switch (done.work) {
    case 'marks':
      return marks;
    case 'rack':
      return [...sizeWords(before, after), ...rackWords(before, after)];
    case 'handle':
      return handleWords(before, after);
    case 'finish':
      return [...marks, ...wrapWords(before, after), ...valueWords(before.finish, after.finish)];
    default:
      return [...marks, ...wrapWords(before, after), ...valueWords(before.thread, after.thread)];
  }
}

/** Half a millimetre is no more than the pencil is thick. */
const pencilM = 0.0005;
const differ = (a = 0, b = 0) => Math.abs(a - b) > pencilM;

function sectionWords(before: RodAsRead, after: RodAsRead): string[] {
  return after.sections.flatMap((section) => {
    const old = before.sections.find(({ id }) => id === section.id);
    if (!old) return [`${section.name} is a new section`];
    return [
      ...(differ(old.lengthM, section.lengthM)
        ? [`${section.name} is now ${bothLengths(section.lengthM)} long, was ${bothLengths(old.lengthM)}`]
        : []),
      ...(differ(old.overlapM, section.overlapM)
        ? [
            `the joint below ${section.name} now sits ${formatMm(Math.abs(section.overlapM - old.overlapM))} ${section.overlapM > old.overlapM ? 'deeper' : 'less deep'}`,
          ]
        : []),
    ];
  });
}

function guideWords(before: RodAsRead, after: RodAsRead): string[] {
  const counts = [before.guides.length, after.guides.length];
  const more = counts[0] === counts[1] ? [] : [`there are ${counts[1]} guides, were ${counts[0]}`];
  const moved = after.guides.flatMap(({ id, stationM }, index) => {
    const old = before.guides.find((guide) => guide.id === id);
    if (old?.stationM === undefined || stationM === undefined || !differ(old.stationM, stationM)) return [];
    const way = stationM > old.stationM ? 'towards the butt' : 'towards the tip';
    return [
      `guide ${index + 1} moved ${formatMm(Math.abs(stationM - old.stationM))} ${way}, to ${bothLengths(stationM)} from the tip`,
    ];
  });
  return [...more, ...moved];
}

function sizeWords(before: RodAsRead, after: RodAsRead): string[] {
  const counts = [before.guides.length, after.guides.length];
  if (counts[0] !== counts[1]) return [`there are ${counts[1]} guides, were ${counts[0]}`];
  return after.guides.flatMap(({ name }, index) =>
    name === before.guides[index].name
      ? []
      : [`guide ${index + 1} is now ${name}, was ${before.guides[index].name}`],
  );
}

/** Which of the bag goes elsewhere now. */
function rackWords(before: RodAsRead, after: RodAsRead): string[] {
  const name = (number: number | undefined) =>
    number === undefined ? 'none of the bag' : `number ${number}`;
  return after.rack.flatMap(({ guide, number }) => {
    const old = before.rack.find((place) => place.guide === guide);
    if (!old || old.number === number) return [];
    return [`place ${guide} now takes ${name(number)}, was ${name(old.number)}`];
  });
}

function valueWords(before: readonly WrittenValue[], after: readonly WrittenValue[]): string[] {
  return after.flatMap(([what, text], index) =>
    text === before[index][1] ? [] : [`${what}: now ${text}, was ${before[index][1]}`],
  );
}

function handleWords(before: RodAsRead, after: RodAsRead): string[] {
  const lengths = after.handle.flatMap(([what, lengthM], index) => {
    const old = before.handle[index][1];
    if (lengthM === undefined || !differ(old, lengthM)) return [];
    return [
      `${what} is now ${bothLengths(lengthM)}, was ${old === undefined ? 'not given' : bothLengths(old)}`,
    ];
  });
  return [...lengths, ...valueWords(before.glue, after.glue)];
}

/** Wraps that changed their width, came or went; those that only moved with their guide are said there. */
function wrapWords(before: RodAsRead, after: RodAsRead): string[] {
  const width = ({ fromTipM, toTipM }: Wrap) => toTipM - fromTipM;
  const old = new Map(before.wraps.map((wrap) => [wrap.name, wrap]));
  const now = new Set(after.wraps.map(({ name }) => name));
  const gone = before.wraps
    .filter(({ name }) => !now.has(name))
    .map(({ name }) => `${name} is no longer wrapped`);
  const changed = after.wraps.flatMap((wrap) => {
    const was = old.get(wrap.name);
    if (!was) return [`${wrap.name} is a new wrap`];
    return differ(width(was), width(wrap))
      ? [`${wrap.name} is now ${formatMm(width(wrap))} long, was ${formatMm(width(was))}`]
      : [];
  });
  return [...changed, ...gone];
}

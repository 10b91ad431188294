/**
 * What has changed under work that was already done: paper that was printed, glue, wraps, a coat.
 * Everything on the bench follows from the record, so that moving a mark moves its wraps in silence; what is on paper
 * or on the rod does not move, and the builder is told what differs from it.
 */
import { assembleBlank } from '../engine/bench/assemble.ts';
import { bothLengths } from '../engine/bench/bench-finding.ts';
import { diameterProfile } from '../engine/bench/diameter-profile.ts';
import { formatMm } from '../engine/units/format-quantity.ts';
import { planWraps, type Wrap } from '../engine/wraps/plan-wraps.ts';
import type { DocumentState, Operation } from './operation.ts';
import { stateAfter } from './past.ts';
import { readBuild } from './read-build.ts';
import { readHandleParts } from './read-handle.ts';
import { readGuidesToWrap, readKeeper, readWrapChoices } from './read-wraps.ts';

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
  bench: { work: 'wraps', words: 'the bench sheet was printed' },
};

/**
 * What differs now from what that work was done by, in the builder's words; empty: all still stands. `habits` fills in
 * what the shop does where the build says nothing, then as now.
 */
export function changedSince(
  log: readonly Operation[],
  done: WorkDone,
  now: DocumentState,
  habits: (state: DocumentState) => DocumentState = (state) => state,
): string[] {
  const [before, after] = [rodOf(habits(stateAfter(log, done.upTo, 'build'))), rodOf(habits(now))];
  if (!before || !after) return [];
  const marks = [...sectionWords(before, after), ...guideWords(before, after)];
  switch (done.work) {
    case 'marks':
      return marks;
    case 'rack':
      return sizeWords(before, after);
    case 'handle':
      return handleWords(before, after);
    default:
      return [...marks, ...wrapWords(before, after)];
  }
}

interface RodAsRead {
  sections: { id: string; name: string; lengthM: number; overlapM: number }[];
  guides: { id: string; name: string; stationM: number | undefined }[];
  handle: [what: string, lengthM: number | undefined][];
  wraps: readonly Wrap[];
}

function rodOf(state: DocumentState): RodAsRead | undefined {
  const { bench, choices } = readBuild(state);
  if (!bench || !choices) return undefined;
  const blank = assembleBlank(bench.sections);
  const { gripFrontFromButtM } = bench.handle;
  const parts = readHandleParts(state, gripFrontFromButtM);
  const profile = diameterProfile(bench.sections, blank);
  const wraps =
    profile.length === 0
      ? []
      : planWraps({
          blank,
          profile,
          guides: readGuidesToWrap(state, choices.guides),
          keeper: readKeeper(state, { lengthM: blank.lengthM, gripFrontFromButtM }),
          gripFrontFromButtM,
          choices: readWrapChoices(state),
        }).wraps;
  return {
    sections: bench.sections.map(({ id, name, lengthM, joint }) => {
      return { id, name, lengthM, overlapM: (joint?.overlapM ?? 0) - (joint?.gapM ?? 0) };
    }),
    guides: choices.guides.map(({ id, kind, size, stationM }, index) => {
      return { id: id ?? `${index}`, name: `${kind} ${size}`.trim(), stationM };
    }),
    handle: [
      ['The front of the grip', parts.gripFrontM],
      ['The grip’s length', parts.gripLengthM],
      ['The seat’s length', parts.seatLengthM],
    ],
    wraps,
  };
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

function handleWords(before: RodAsRead, after: RodAsRead): string[] {
  return after.handle.flatMap(([what, lengthM], index) => {
    const old = before.handle[index][1];
    if (lengthM === undefined || !differ(old, lengthM)) return [];
    return [
      `${what} is now ${bothLengths(lengthM)}, was ${old === undefined ? 'not given' : bothLengths(old)}`,
    ];
  });
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

import { assembleBlank } from '../engine/bench/assemble.ts';
import { type DiameterRow, diameterProfile } from '../engine/bench/diameter-profile.ts';
import { coatsOnRod } from '../engine/finish/coats-on-rod.ts';
import type { Choices } from '../engine/flow/choices.ts';
import { type Assign, sortBag } from '../engine/guides/bag-sorting.ts';
import type { HandleParts } from '../engine/handle/handle-parts.ts';
import { guideName } from '../engine/kinds/guides.ts';
import { formatMm } from '../engine/units/format-quantity.ts';
import { threadCalled } from '../engine/wraps/colour-words.ts';
import { planWraps, type Wrap, type WrapPlan } from '../engine/wraps/plan-wraps.ts';
import type { WrapChoices } from '../engine/wraps/wrap-choices.ts';
import type { DocumentState } from './operation.ts';
import { readBuild } from './read-build.ts';
import { type FinishChoices, readFinish } from './read-finish.ts';
import { bagPlaces, readBag, readGuideSet, readSortingRules } from './read-guide-set.ts';
import { readHandleParts } from './read-handle.ts';
import { readGuidesToWrap, readKeeper, readWrapChoices } from './read-wraps.ts';

/** The rod as far as paper or work hangs on it. */
export interface RodAsRead {
  sections: { id: string; name: string; lengthM: number; overlapM: number }[];
  guides: { id: string; name: string; stationM: number | undefined }[];
  handle: [what: string, lengthM: number | undefined][];
  /** How it is glued: what is finer than a pencil's line, as it is written. */
  glue: WrittenValue[];
  wraps: readonly Wrap[];
  thread: WrittenValue[];
  finish: WrittenValue[];
  /** Number in the bag by place from the tip; empty while nothing sorts it. */
  rack: { guide: number; number: number | undefined }[];
}
/** `Pot life`, `20 min`: compared as it is read. */
export type WrittenValue = readonly [what: string, text: string];

/** Undefined while the sections make no blank. */
export function rodOf(state: DocumentState, assign: Assign | undefined): RodAsRead | undefined {
  const { bench, choices } = readBuild(state);
  if (!bench || !choices) return undefined;
  const blank = assembleBlank(bench.sections);
  const { gripFrontFromButtM } = bench.handle;
  const parts = readHandleParts(state, gripFrontFromButtM);
  const profile = diameterProfile(bench.sections, blank);
  const wrapChoices = readWrapChoices(state);
  const plan =
    profile.length === 0
      ? undefined
      : planWraps({
          blank,
          profile,
          guides: readGuidesToWrap(state, choices.guides),
          keeper: readKeeper(state, { lengthM: blank.lengthM, gripFrontFromButtM }),
          gripFrontFromButtM,
          choices: wrapChoices,
        });
  return {
    sections: bench.sections.map(({ id, name, lengthM, joint }) => {
      return { id, name, lengthM, overlapM: (joint?.overlapM ?? 0) - (joint?.gapM ?? 0) };
    }),
    guides: choices.guides.map(({ id, kind, size, stationM }, index) => {
      return { id: id ?? `${index}`, name: guideName({ kind, size }), stationM };
    }),
    handle: [
      ['The front of the grip', parts.gripFrontM],
      ['The grip’s length', parts.gripLengthM],
      ['The seat’s length', parts.seatLengthM],
    ],
    glue: glueValues(parts),
    wraps: plan?.wraps ?? [],
    thread: threadValues(wrapChoices),
    finish: finishValues(readFinish(state), plan),
    rack: assign && plan ? rackOf(state, choices, profile, assign) : [],
  };
}

const fineMm = (lengthM: number) => formatMm(lengthM, 2);

function glueValues(parts: HandleParts): WrittenValue[] {
  return [
    ['Arbors', `${parts.arborCount} of ${fineMm(parts.arborWidthM)}`],
    ['The glue line of the grip', fineMm(parts.glueLineM)],
    ['The reamer', `stops ${fineMm(parts.reamShortM)} short`],
  ];
}

function threadValues(choices: WrapChoices): WrittenValue[] {
  const { laidWidthM, lockTurns, trimTurns, underwrap } = choices;
  return [
    ['The thread', threadCalled(choices.thread)],
    ['The trim', threadCalled(choices.trim)],
    ['One turn of thread', `${(laidWidthM * 1000).toFixed(3)} mm`],
    ['Turns over the tag', `${lockTurns}`],
    ['Trim turns at each end', `${trimTurns}`],
    ['An underwrap', underwrap ? 'under every foot' : 'not laid'],
  ];
}

function finishValues(read: FinishChoices, wraps: WrapPlan | undefined): WrittenValue[] {
  const { batch } = coatsOnRod({ ...read, wraps });
  const { times } = read;
  const hours = (seconds: number) => `${Number((seconds / 3600).toFixed(2))} h`;
  return [
    [
      'The mix',
      batch
        ? `${batch.partA.toFixed(1)} + ${batch.partB.toFixed(1)} ${batch.unit}, ${batch.batches} to a coat`
        : 'not known',
    ],
    ['The room', `${read.roomC} °C`],
    ['Pot life', `${Number((times.potLifeS / 60).toFixed(1))} min at ${times.statedC} °C`],
    ['Turning', hours(times.turnForS)],
    ['Recoating', `${hours(times.recoatFromS)} to ${hours(times.recoatUntilS)}`],
    ['Bending', hours(times.flexAfterS)],
    ['Fishing', hours(times.fishAfterS)],
    ['A time halves', `every ${times.halvesPerC} °C`],
  ];
}

function rackOf(
  state: DocumentState,
  choices: Choices,
  profile: readonly DiameterRow[],
  assign: Assign,
): RodAsRead['rack'] {
  const bag = readBag(state);
  const places = bagPlaces(readGuideSet(state, choices.guides), profile);
  return sortBag(bag, places, assign, readSortingRules(state)).places.map(({ guide, bagId }) => {
    const index = bag.findIndex(({ id }) => id === bagId);
    return { guide, number: index < 0 ? undefined : index + 1 };
  });
}

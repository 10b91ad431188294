import { assembleBlank } from '../engine/bench/assemble.ts';
import { type DiameterRow, diameterProfile } from '../engine/bench/diameter-profile.ts';
import { coatsOnRod } from '../engine/finish/coats-on-rod.ts';
import { commonHalvesPerC } from '../engine/finish/temperature.ts';
import type { Choices } from '../engine/flow/choices.ts';
import { type Assign, sortBag } from '../engine/guides/bag-sorting.ts';
import type { HandleParts } from '../engine/handle/handle-parts.ts';
import { guideName } from '../engine/kinds/guides.ts';
import { planWraps, type Wrap, type WrapPlan } from '../engine/wraps/plan-wraps.ts';
import type { ThreadColour, WrapChoices } from '../engine/wraps/wrap-choices.ts';
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
  handle: Record<HandleLength, number | undefined>;
  /** How it is glued: what is finer than a pencil's line. */
  glue: Pick<RodValues, 'arbors' | 'glueLine' | 'reamer'>;
  wraps: readonly Wrap[];
  thread: Pick<RodValues, 'thread' | 'trim' | 'turn' | 'lockTurns' | 'trimTurns' | 'underwrap'>;
  finish: Omit<RodValues, keyof RodAsRead['glue'] | keyof RodAsRead['thread']>;
  /** Number in the bag by place from the tip; empty while nothing sorts it. */
  rack: { guide: number; number: number | undefined }[];
}
export type HandleLength = 'gripFront' | 'gripLength' | 'seatLength';
/** What stands on paper beside the lengths. Rounded as it is read there, so that equal values are equal. */
export interface RodValues {
  arbors: { count: number; widthM: number };
  glueLine: { lengthM: number };
  reamer: { shortM: number };
  thread: Pick<ThreadColour, 'name' | 'colour'>;
  trim: Pick<ThreadColour, 'name' | 'colour'>;
  turn: { widthM: number };
  lockTurns: { turns: number };
  trimTurns: { turns: number };
  underwrap: { laid: boolean };
  mix: { partA: number; partB: number; unit: 'ml' | 'g'; batches: number } | undefined;
  room: { roomC: number };
  potLife: { lastsS: number; statedC: number };
  turning: { lastsS: number };
  recoating: { fromS: number; untilS: number };
  bending: { afterS: number };
  fishing: { afterS: number };
  halving: { everyC: number };
}

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
    handle: {
      gripFront: parts.gripFrontM,
      gripLength: parts.gripLengthM,
      seatLength: parts.seatLengthM,
    },
    glue: glueValues(parts),
    wraps: plan?.wraps ?? [],
    thread: threadValues(wrapChoices),
    finish: finishValues(readFinish(state), plan),
    rack: assign && plan ? rackOf(state, choices, profile, assign) : [],
  };
}

function glueValues({ arborCount, arborWidthM, glueLineM, reamShortM }: HandleParts): RodAsRead['glue'] {
  return {
    arbors: { count: arborCount, widthM: arborWidthM },
    glueLine: { lengthM: glueLineM },
    reamer: { shortM: reamShortM },
  };
}

function threadValues(choices: WrapChoices): RodAsRead['thread'] {
  const colour = ({ name, colour: picked }: ThreadColour) => ({ name, colour: picked });
  return {
    thread: colour(choices.thread),
    trim: colour(choices.trim),
    turn: { widthM: rounded(choices.laidWidthM, 1e-6) },
    lockTurns: { turns: choices.lockTurns },
    trimTurns: { turns: choices.trimTurns },
    underwrap: { laid: choices.underwrap },
  };
}

function finishValues(read: FinishChoices, wraps: WrapPlan | undefined): RodAsRead['finish'] {
  const { batch } = coatsOnRod({ ...read, wraps });
  const { times } = read;
  return {
    mix: batch && {
      partA: rounded(batch.partA, 0.1),
      partB: rounded(batch.partB, 0.1),
      unit: batch.unit,
      batches: batch.batches,
    },
    room: { roomC: read.roomC },
    potLife: { lastsS: times.potLifeS, statedC: times.statedC },
    turning: { lastsS: times.turnForS },
    recoating: { fromS: times.recoatFromS, untilS: times.recoatUntilS },
    bending: { afterS: times.flexAfterS },
    fishing: { afterS: times.fishAfterS },
    halving: { everyC: times.halvesPerC ?? commonHalvesPerC },
  };
}

function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(12));
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
